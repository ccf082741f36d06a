/** How a law is tried: so many times, with the same numbers on every machine. */
export const tried = (times: number) => ({ numRuns: times, seed: 20_260_504 });
