import { cp, rm } from 'node:fs/promises';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { openForWriting } from '../../src/persist/index.ts';
import { readScheduleFolders } from '../../src/persist/schedules/index.ts';
import { hour, day, inventBench, inventor, minute } from './invented-bench.mjs';

/** @typedef {import('../../src/tracker/bench/index.ts').BenchFact} BenchFact */

const packageRoot = join(import.meta.dirname, '..', '..');
const year = 365 * day;

/**
 * One refinisher's pieces in a year, who has three to eight at a time on the bench for three weeks each.
 */
const piecesAYear = 80;

/** @returns {Promise<ReturnType<typeof inventor>>} */
export async function inventorOfTemplates() {
  const templates = join(packageRoot, 'templates');
  const library = await readScheduleFolders({ built: null, templates, own: null });
  return inventor(library.schedules);
}

/**
 * Writes that many years of finished pieces into the history of a store.
 *
 * @param {string} folder
 * @param {{years: number, now: number, invent: ReturnType<typeof inventor>}} wanted
 */
export async function writeHistory(folder, { years, now, invent }) {
  const store = await opened(folder, now);
  for (const calendarYear of yearsBefore(now, years)) {
    const leaving = Array.from({ length: piecesAYear }, (_, index) => {
      const added = Date.UTC(calendarYear, 0, 1) + (index / piecesAYear) * 0.7 * year;
      return { year: calendarYear, facts: finishedPiece(invent, added) };
    });
    must(store.moveToHistory(leaving));
  }
  store.close();
}

/** @param {number} now @param {number} years */
const yearsBefore = (now, years) =>
  Array.from({ length: years }, (_, index) => new Date(now).getUTCFullYear() - years + index);

/**
 * The same for very many pieces: some are invented, and the others are these again under other ids and in other years.
 *
 * @param {string} folder
 * @param {{years: number, now: number, invent: ReturnType<typeof inventor>, piecesAYear: number, invented: number}} wanted
 */
export async function writeLongHistory(folder, { years, now, invent, piecesAYear, invented }) {
  const store = await opened(folder, now);
  const [first = 0] = yearsBefore(now, years);
  const patterns = Array.from({ length: invented }, (_, index) =>
    finishedPiece(invent, Date.UTC(first, 0, 1) + (index / invented) * 0.7 * year),
  );
  let number = 0;
  for (const calendarYear of yearsBefore(now, years)) {
    const later = Date.UTC(calendarYear, 0, 1) - Date.UTC(first, 0, 1);
    const leaving = Array.from({ length: piecesAYear }, (_, index) => {
      number += 1;
      const facts = againAs(patterns[index % invented] ?? [], number, later);
      return { year: calendarYear, facts };
    });
    must(store.moveToHistory(leaving));
  }
  store.close();
}

/** No length, size or count is that large: what is, is an instant. */
const smallestInstant = 1e11;

/**
 * @param {readonly BenchFact[]} facts
 * @param {number} number
 * @param {number} later
 * @returns {readonly BenchFact[]}
 */
const againAs = (facts, number, later) =>
  JSON.parse(JSON.stringify(facts), (_, value) => {
    if (typeof value === 'number') return value > smallestInstant ? value + later : value;
    return typeof value === 'string' ? value.replace(/^demo\d+/, `again${number}`) : value;
  });

/** @param {ReturnType<typeof inventor>} invent @param {number} added @returns {readonly BenchFact[]} */
function finishedPiece(invent, added) {
  const record = invent(added);
  const finished = record.workUntil(null, added);
  record.act(
    { do: 'write note', piece: record.id, step: null, text: 'drawer runner replaced' },
    finished,
  );
  record.act({ do: 'take off bench', piece: record.id }, finished + hour);
  return record.facts(1);
}

/**
 * Writes a bench as it stands at `now`, with a week of readings, on top of what the store holds. Nothing on it leaves
 * the screen to show something else, or starts another program, while it is measured.
 *
 * @param {string} folder
 * @param {{pieces: number, now: number, invent: ReturnType<typeof inventor>, firstOpensIn?: number, apart?: number}} wanted
 */
export async function writeBench(
  folder,
  { pieces, now, invent, firstOpensIn = 4 * minute, apart = 5 * minute },
) {
  const store = await opened(folder, now);
  const bench = inventBench(invent, { pieces, now, firstOpensIn, apart });
  must(store.change(() => ({ append: { bench, conditions: readings(now) }, result: null })));
  must(
    store.changeSettings((settings) => ({
      settings: { ...settings, farView: 0, desktop: false, bell: 'never', awake: false },
      result: null,
    })),
  );
  store.close();
}

/** The air as read four times a day over a week. @param {number} now */
const readings = (now) =>
  Array.from({ length: 28 }, (_, index) => {
    const at = now - 30 * minute - (27 - index) * 6 * hour;
    return {
      ...{
        id: `air-${index}.1`,
        group: `air-${index}`,
        at,
        told: at,
        uptimeMs: null,
        bootId: null,
      },
      by: /** @type {const} */ ('person'),
      kind: /** @type {const} */ ('reading-taken'),
      // The climate that the labels are stated for: the coats open at the label's own times, as the bench is invented.
      body: { tempC: 23, rh: 50 },
    };
  });

/** @param {string} folder @param {number} now */
async function opened(folder, now) {
  const today = () => new Date(now).toISOString().slice(0, 10);
  return must(await openForWriting(folder, { clock: { now: () => now, today } }));
}

/**
 * @template T
 * @param {import('../../src/persist/index.ts').Result<T>} result
 * @returns {T}
 */
function must(result) {
  if (result.ok) return result.value;
  throw new Error(`${result.problem.says} ${result.problem.todo}`);
}

/** @param {string} from @param {string} to */
export async function copyStore(from, to) {
  await rm(to, { recursive: true, force: true });
  await cp(from, to, { recursive: true });
}

/** `node scripts/measure/large-store.mjs FOLDER [PIECES] [YEARS]` makes such a store to look at. */
if (process.argv[1] === fileURLToPath(import.meta.url)) {
  const [folder, pieces = '60', years = '10'] = process.argv.slice(2);
  if (folder === undefined) {
    console.error('Not written: name the folder to write the store into.');
    process.exitCode = 64;
  } else {
    const [invent, now] = [await inventorOfTemplates(), Date.now()];
    await writeHistory(folder, { years: Number(years), now, invent });
    await writeBench(folder, { pieces: Number(pieces), now, invent });
  }
}
