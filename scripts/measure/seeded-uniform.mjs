import { uniformFloat64 } from 'pure-rand/distribution/uniformFloat64';
import { xoroshiro128plus } from 'pure-rand/generator/xoroshiro128plus';

/**
 * Numbers from 0 up to 1 that come out the same for the same seed.
 *
 * @param {number} seed
 */
export function seededUniform(seed) {
  const generator = xoroshiro128plus(seed);
  return () => uniformFloat64(generator);
}
