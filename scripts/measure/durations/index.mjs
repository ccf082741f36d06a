import { median } from '../statistics.mjs';
import { readDurations } from './read-durations.mjs';
import { chances, rules, yardstick } from './rules.mjs';
import { tensHeld } from './totals.mjs';

const first = 30;

/** @param {number} took @param {readonly number[]} told log minutes at the chances */
const pinballLoss = (took, told) =>
  chances.reduce((sum, p, i) => {
    const off = took - (told[i] ?? NaN);
    return sum + Math.max(p * off, (p - 1) * off);
  }, 0) / chances.length;

/** Rounding must not decide whether an exact one is inside. */
const hair = 1e-9;

/** @param {readonly number[]} values */
const mean = (values) => values.reduce((sum, value) => sum + value, 0) / values.length;

/**
 * @typedef {{took: number, told: readonly number[], place: number}} Foretold
 * @param {readonly Foretold[]} foretold
 */
function figuresOf(foretold) {
  const inside = foretold.map(({ took, told: [low = NaN, , high = NaN] }) =>
    took >= low - hair && took <= high + hair ? 1 : 0,
  );
  return {
    error: median(foretold.map(({ took, told }) => Math.abs(took - (told[1] ?? NaN)))),
    loss: mean(foretold.map(({ took, told }) => pinballLoss(took, told))),
    held: mean(inside),
    width: Math.exp(mean(foretold.map(({ told }) => (told[2] ?? NaN) - (told[0] ?? NaN)))),
  };
}

/**
 * Holds the learned minutes against simple rules on collections of estimated and actual minutes, and prints the table.
 *
 * @param {string} folder
 */
export async function measureDurations(folder) {
  const files = await readDurations(folder);
  if (files.length === 0) {
    console.error(
      `Not measured: ${folder} has no CSV with the columns person, category, estimate_min, actual_min.`,
    );
    return false;
  }
  /** @type {Record<string, {all: number, first: number}[]>} */
  const ratios = {};
  for (const { name, people, leftOut } of files) {
    const tasks = people.reduce((sum, own) => sum + own.length, 0);
    console.log(`\n${name}: ${tasks} tasks, ${people.length} people, ${leftOut} left out\n`);
    console.log(
      `| rule | error | loss | held | width | loss, first ${first} | held, first ${first} |\n| --- | --- | --- | --- | --- | --- | --- |`,
    );
    /** @type {{all: number, first: number} | null} */
    let base = null;
    const lines = Object.entries(rules).map(([rule, foretell]) => {
      const foretold = people.flatMap((own) => {
        const told = foretell(own);
        return own.map(({ actual }, place) => ({
          took: Math.log(actual),
          told: told[place] ?? [],
          place,
        }));
      });
      const whole = figuresOf(foretold);
      const early = figuresOf(foretold.filter(({ place }) => place < first));
      if (rule === yardstick) base = { all: whole.loss, first: early.loss };
      return { rule, whole, early };
    });
    for (const { rule, whole, early } of lines) {
      const { all, first: firstLoss } = base ?? { all: NaN, first: NaN };
      (ratios[rule] ??= []).push({ all: whole.loss / all, first: early.loss / firstLoss });
      const cells = [whole.error, whole.loss, whole.held, whole.width, early.loss, early.held];
      console.log(`| ${[rule, ...cells.map((cell) => cell.toFixed(3))].join(' | ')} |`);
    }
    const { held, tens, width } = tensHeld(people);
    console.log(
      `\nTen together, drawn jointly: ${held.toFixed(3)} of ${tens} held, width ${width.toFixed(2)}`,
    );
  }
  console.log(`\nLoss against "${yardstick}", geometric mean over the files:\n`);
  for (const [rule, each] of Object.entries(ratios)) {
    const all = Math.exp(mean(each.map((ratio) => Math.log(ratio.all))));
    const early = Math.exp(mean(each.map((ratio) => Math.log(ratio.first))));
    console.log(`| ${rule} | ${all.toFixed(3)} | first ${first}: ${early.toFixed(3)} |`);
  }
  return true;
}
