/**
 * A process of its own that works on a store: `node work-on-request.ts FOLDER`. Each line on standard input is one
 * request, answered by one line of JSON: `append ID`, `hold MS` (keeps the lock that long), `close`.
 */
import { writeSync } from 'node:fs';
import { createInterface } from 'node:readline';
import { openForWriting } from '../../../src/persist/index.ts';
import { note, noon } from '../facts.ts';

const answer = (value: unknown) => writeSync(1, `${JSON.stringify(value)}\n`);

const [folder = ''] = process.argv.slice(2);
const opened = await openForWriting(folder, {
  clock: { now: () => noon, today: () => '2026-11-24' },
});
answer(opened.ok ? { ok: true } : opened);

for await (const line of createInterface({ input: process.stdin })) {
  if (!opened.ok) break;
  const store = opened.value;
  const [verb, word = ''] = line.split(' ');
  if (verb === 'append') {
    answer(store.change(() => ({ append: { bench: [note(word)] }, result: word })));
  } else if (verb === 'hold') {
    store.change(() => {
      answer({ ok: true, value: 'holding' });
      Atomics.wait(new Int32Array(new SharedArrayBuffer(4)), 0, 0, Number(word));
      return { append: {}, result: null };
    });
  } else {
    store.close();
    break;
  }
}
