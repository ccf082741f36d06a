import { foreseenTotal, nothingLearned, teach } from '../../../src/tracker/learning/index.ts';
import { seededUniform } from '../seeded-uniform.mjs';

const together = 10;

/**
 * Tasks in tens, each ten foretold from those before it: how often what they took together lay within the range that was
 * drawn for four in five, and how wide that range was.
 *
 * @param {readonly (readonly import('./read-durations.mjs').Task[])[]} people
 */
export function tensHeld(people) {
  const uniform = seededUniform(20);
  let [held, tens, logWidth] = [0, 0, 0];
  for (const tasks of people) {
    let learned = nothingLearned();
    for (let from = 0; from + together <= tasks.length; from += together) {
      const ten = tasks.slice(from, from + together).map(({ category, estimate, actual }) => ({
        stepClass: category,
        scheduled: estimate,
        minutes: actual,
      }));
      const quantile = foreseenTotal(learned, ten, uniform);
      const took = ten.reduce((sum, { minutes }) => sum + minutes, 0);
      if (took >= quantile(0.1) && took <= quantile(0.9)) held += 1;
      logWidth += Math.log(quantile(0.9) / quantile(0.1));
      tens += 1;
      learned = teach(learned, ten);
    }
  }
  return { held: held / tens, tens, width: Math.exp(logWidth / tens) };
}
