import { uniformFloat64 } from 'pure-rand/distribution/uniformFloat64';
import { xoroshiro128plus } from 'pure-rand/generator/xoroshiro128plus';

/** Chance that comes out the same for the same seed. */
export type Chance = {
  /** Between 0 and 1. */
  readonly part: () => number;
  /** A factor around 1 with that spread of its logarithm. */
  readonly factor: (spread: number) => number;
};

export function chanceFrom(seed: number): Chance {
  const generator = xoroshiro128plus(seed);
  const part = (): number => uniformFloat64(generator);
  return {
    part,
    // Twelve uniform parts less six are near enough a standard normal for invented history.
    factor: (spread) =>
      Math.exp(
        spread * (Array.from({ length: 12 }, part).reduce((sum, each) => sum + each, 0) - 6),
      ),
  };
}
