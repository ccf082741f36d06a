/** By how many times minutes missed, counted in bins, so that ten years of them take no more room than a day's. */
export type Misses = {
  /** @param ratio minutes by what was expected, above 0 */
  readonly add: (ratio: number) => void;
  /** Half missed by no more than so many times, 1 or more; to a hundredth. 1 with none. */
  readonly middle: () => number;
};

/** A hundredth of a logarithm each; what missed by more than 50 times lies in the last. */
const binsPerLog = 100;
const bins = 400;

/** Counts by how much ratios miss 1, so that their middle is known without keeping them. */
export function createMisses(): Misses {
  const counts = new Uint32Array(bins);
  let all = 0;
  return {
    add: (ratio) => {
      const bin = Math.min(bins - 1, Math.floor(Math.abs(Math.log(ratio)) * binsPerLog));
      counts[bin] = (counts[bin] ?? 0) + 1;
      all += 1;
    },
    middle: () => {
      if (all === 0) return 1;
      let below = 0;
      for (const [bin, count] of counts.entries()) {
        below += count;
        if (below * 2 >= all) return Math.exp((bin + 0.5) / binsPerLog);
      }
      return Math.exp(bins / binsPerLog);
    },
  };
}
