/**
 * A process of its own that appends notes one at a time: `node append-many.ts FOLDER PREFIX COUNT`. Writes the id of each
 * to standard output once the store has confirmed it. Every note tells how many facts its change found.
 */
import { writeSync } from 'node:fs';
import { openForWriting } from '../../../src/persist/index.ts';
import { note, noon } from '../facts.ts';

const [folder = '', prefix = '', count = ''] = process.argv.slice(2);
const opened = await openForWriting(folder, {
  clock: { now: () => noon, today: () => '2026-11-24' },
});
if (!opened.ok) throw new Error(opened.problem.says);
for (let index = 0; index < Number(count); index++) {
  const id = `${prefix}${index}`;
  const told = opened.value.change(({ bench }) => ({
    append: { bench: [note(id, String(bench.length))] },
    result: null,
  }));
  if (!told.ok) throw new Error(told.problem.says);
  writeSync(1, `${id}\n`);
}
