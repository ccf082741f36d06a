import { foreseenMinutes, nothingLearned, teach } from '../../../src/tracker/learning/index.ts';
import { atMost } from '../report.mjs';
import { seededUniform } from '../seeded-uniform.mjs';
import { median } from '../statistics.mjs';

const sessions = 100_000;
const classes = 30;
const rounds = 300;

/**
 * How long it takes to foretell one step's minutes after a very long history.
 *
 * @returns {Promise<readonly import('../report.mjs').Row[]>}
 */
export function foreseeingRows() {
  const uniform = seededUniform(4);
  const learned = teach(
    nothingLearned(),
    Array.from({ length: sessions }, () => {
      const scheduled = 10 + 80 * uniform();
      const stepClass = `class ${Math.floor(classes * uniform())}`;
      return { stepClass, scheduled, minutes: scheduled * Math.exp(uniform() - 0.4) };
    }),
  );
  const times = Array.from({ length: rounds }, (_, round) => {
    const began = performance.now();
    const quantile = foreseenMinutes(learned, `class ${round % classes}`, 30);
    for (const p of [0.1, 0.5, 0.9]) quantile?.(p);
    return performance.now() - began;
  });
  const detail = `median of ${rounds}; one step's range`;
  return Promise.resolve([
    atMost(`minutes foretold after ${sessions} steps, ms`, 1, median(times), detail),
  ]);
}
