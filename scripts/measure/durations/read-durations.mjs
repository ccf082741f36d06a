import { readFile, readdir } from 'node:fs/promises';
import { join } from 'node:path';

/**
 * One task: what it was and took, in minutes.
 *
 * @typedef {{person: string, category: string, estimate: number, actual: number}} Task
 */

/** Where nobody estimated anything. */
const noEstimate = 60;

/**
 * Every `*.csv` of a folder that has the columns person, category, estimate_min and actual_min, its tasks by person, each
 * in the order in which they were done. Rows that took no time are left out.
 *
 * @param {string} folder
 * @returns {Promise<readonly {name: string, people: readonly (readonly Task[])[], leftOut: number}[]>}
 */
export async function readDurations(folder) {
  const names = (await readdir(folder)).filter((name) => name.endsWith('.csv')).sort();
  const files = await Promise.all(
    names.map(async (name) => ({ name, ...tasksOf(await readFile(join(folder, name), 'utf8')) })),
  );
  return files.filter(({ people }) => people.length > 0);
}

/** @param {string} text */
function tasksOf(text) {
  const [head = '', ...lines] = text.trim().split(/\r?\n/);
  const columns = head.split(',');
  const [person, category, estimate, actual] = [
    'person',
    'category',
    'estimate_min',
    'actual_min',
  ].map((name) => columns.indexOf(name));
  /** @type {Map<string, Task[]>} */
  const people = new Map();
  let leftOut = 0;
  if (person === undefined || person < 0 || actual === undefined || actual < 0)
    return { people: [], leftOut };
  for (const line of lines) {
    const cells = line.split(',');
    const task = {
      person: cells[person] ?? '',
      category: cells[category ?? -1] ?? '',
      estimate: Number(cells[estimate ?? -1] || noEstimate),
      actual: Number(cells[actual]),
    };
    if (!(task.actual > 0) || !(task.estimate > 0)) {
      leftOut += 1;
      continue;
    }
    const own = people.get(task.person);
    if (own === undefined) people.set(task.person, [task]);
    else own.push(task);
  }
  return { people: [...people.values()], leftOut };
}
