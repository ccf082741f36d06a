import type {
  BenchFact,
  ClockReading,
  FactHead,
  NewBenchFact,
  Teller,
} from '../tracker/bench/index.ts';

/**
 * The head of the first fact that one key press or command made.
 *
 * @param clock read once for all of it: two readings with a wait between them would look like a clock that was set
 */
export const factHead = (
  group: string,
  { told, uptimeMs, bootId }: ClockReading,
  by: Teller = 'person',
): FactHead => ({ id: `${group}.1`, group, at: told, told, by, uptimeMs, bootId });

/** Gives new facts their heads: ids named after the key press, when they were told, and the machine's own time. */
export const headFacts = (
  facts: readonly NewBenchFact[],
  group: string,
  clock: ClockReading,
  by: Teller = 'person',
): readonly BenchFact[] => {
  const head = factHead(group, clock, by);
  return facts.map(({ at, ...fact }, index) => ({
    ...head,
    id: `${group}.${index + 1}`,
    at: at ?? head.at,
    ...fact,
  }));
};
