import { join } from 'node:path';
import { keysAtRandom } from '../../../tests/views/random-keys/keys-at-random.ts';
import { atMost } from '../report.mjs';

const packageFolder = join(import.meta.dirname, '..', '..', '..');

/** With the 3,000 of `npm test` a hundred thousand. */
const runs = 97;
const keysARun = 1000;

/**
 * Keys at random on the real screens, and how many of the runs ended in a frame or a bench that is not as it must be.
 *
 * @returns {Promise<readonly import('../report.mjs').Row[]>}
 */
export async function keysAtRandomRows() {
  let keys = 0;
  /** @type {string[]} */
  const broken = [];
  for (let seed = 101; seed < 101 + runs; seed += 1) {
    try {
      keys += (await keysAtRandom({ keys: keysARun, seed, packageFolder })).keys;
    } catch (error) {
      const said = error instanceof Error ? error.message : String(error);
      console.error(said);
      broken.push(said.split('\n')[0]?.slice(0, 120) ?? '');
    }
  }
  return [
    atMost(
      'runs of random keys that broke a frame or the bench',
      0,
      broken.length,
      `${runs} x ${keysARun}, ${keys} without a fault, sizes from 1 x 1 to 160 x 50${broken.length === 0 ? '' : `; ${broken[0] ?? ''}`}`,
    ),
  ];
}
