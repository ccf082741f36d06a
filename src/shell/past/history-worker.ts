import { parentPort, workerData } from 'node:worker_threads';
import { presentForm } from '../../persist/file/form.ts';
import { historyPrints, readLearned, writeLearned } from '../../persist/learned/learned-file.ts';
import { readHistory } from '../../persist/reading/careful.ts';
import { historyYears } from '../../persist/reading/history-years.ts';
import { learnHistory, nothingLearnedYet, type YearReader } from './learn-history.ts';
import { lookBack } from './look-back.ts';
import type { LookBackWish, PastYears, WorkerStart, WorkerTold } from './worker-words.ts';

/** Works on past years in a thread of its own, so that no key waits for it. It reads, and writes nothing but the cache. */
const { start } = workerData as { start: WorkerStart };

const tell = (told: WorkerTold): void => parentPort?.postMessage(told);

const readerIn = (folder: string): YearReader => ({
  readHistory: (year) =>
    readHistory({ folder, form: presentForm, clock: { now: () => Date.now() } }, year),
});

const given = (facts: Extract<PastYears, { folder: null }>['facts']): YearReader => ({
  readHistory: () => ({ ok: true, value: { facts, notices: [] } }),
});

if (start.do === 'learn') {
  const { folder, ...from } = start;
  const learned = learnHistory(
    readerIn(folder),
    { ...from, years: historyPrints(folder) },
    readLearned(folder) ?? nothingLearnedYet,
  );
  writeLearned(folder, learned);
  tell({ is: 'learned', learned });
} else {
  const { years } = start;
  const { wish, failed } = lookBack(start, {
    ...(years.folder === null
      ? { years: [0], reader: given(years.facts) }
      : { years: historyYears(years.folder), reader: readerIn(years.folder) }),
    tell,
    pause: () => new Promise((resolve) => setImmediate(resolve)),
  });
  parentPort?.on('message', (wished: LookBackWish) => wish(wished));
  // What goes wrong ends the worker, and is told by whoever started it.
  void failed;
}
