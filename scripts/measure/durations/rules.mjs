import {
  foreseenMinutes,
  nothingLearned,
  teach,
  usualPrior,
} from '../../../src/tracker/learning/index.ts';
import { sampleQuantile } from '../../../src/tracker/estimate/index.ts';

/**
 * Foretells one person's tasks one after the other, each from those before it: for every task the log minutes that it
 * stays below with 10, 50 and 90 %.
 *
 * @typedef {(tasks: readonly import('./read-durations.mjs').Task[]) => readonly (readonly number[])[]} Rule
 */

export const chances = [0.1, 0.5, 0.9];

/** @type {Rule} */
const estimateItself = (tasks) =>
  tasks.map(({ estimate }) => chances.map(() => Math.log(estimate)));

/** How many of a category make it speak for itself. */
const enough = 5;

/** A factor of two either way, where there is nothing before.
 *
 * @param {number} around log minutes
 */
const factorOfTwo = (around) => [around - Math.LN2, around, around + Math.LN2];

/**
 * The person's earlier values in the category; those in all categories while there are fewer than five.
 *
 * @param {(task: import('./read-durations.mjs').Task) => number} scale log minutes that count as one
 * @returns {Rule}
 */
const earlierOnes = (scale) => (tasks) => {
  /** @type {Map<string, number[]>} */
  const byCategory = new Map();
  /** @type {number[]} */
  const all = [];
  return tasks.map((task) => {
    const own = byCategory.get(task.category) ?? [];
    byCategory.set(task.category, own);
    const sample = own.length >= enough ? own : all;
    const at = scale(task);
    const told =
      sample.length === 0
        ? factorOfTwo(Math.log(task.estimate))
        : chances.map((p) => at + (sampleQuantile(sample, p) ?? 0));
    own.push(Math.log(task.actual) - at);
    all.push(Math.log(task.actual) - at);
    return told;
  });
};

/**
 * @param {typeof usualPrior} prior
 * @returns {Rule}
 */
const learning = (prior) => (tasks) => {
  let learned = nothingLearned(prior);
  return tasks.map(({ category, estimate, actual }) => {
    const quantile = foreseenMinutes(learned, category, estimate, prior);
    learned = teach(
      learned,
      [{ stepClass: category, scheduled: estimate, minutes: actual }],
      prior,
    );
    return chances.map((p) => Math.log(quantile?.(p) ?? NaN));
  });
};

/** The rule that others are held against. */
export const yardstick = 'estimate x median ratio in category';

/** @type {Readonly<Record<string, Rule>>} */
export const rules = {
  'the estimate itself': estimateItself,
  'running median in category': earlierOnes(() => 0),
  [yardstick]: earlierOnes(({ estimate }) => Math.log(estimate)),
  'learned, exact ones like any': learning({ ...usualPrior, exact: null }),
  learned: learning(usualPrior),
};
