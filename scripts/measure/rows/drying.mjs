import { heldByPastCoats } from '../../../tests/tracker/learning/tried-coats.ts';

const rounds = 500;

/**
 * How often the next coat dries within the range for four in five, after so many that were tried.
 *
 * @returns {Promise<readonly import('../report.mjs').Row[]>}
 */
export function dryingRows() {
  const rows = [0, 1, 2, 4, 8, 16].map((past) => {
    const held = heldByPastCoats(past, rounds, 100 + past);
    return {
      what: `next coat within the range for 4 in 5, after ${past} coats`,
      target: '0.78 to 0.92',
      measured: held.toFixed(2),
      met: held >= 0.78 && held <= 0.92,
      detail: `${rounds} invented products, other centre and spread than the priors`,
    };
  });
  return Promise.resolve(rows);
}
