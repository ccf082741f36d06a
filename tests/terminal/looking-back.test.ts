import { expect, it } from 'vitest';
import { inventorOfTemplates, writeLongHistory } from '../../scripts/measure/large-store.mjs';
import { keys, openTerminal, temporaryFolder } from './support/terminal.ts';

it('shows how far it is with past years, hears keys meanwhile, and stops by s and by leaving', async () => {
  const folder = temporaryFolder();
  const invent = await inventorOfTemplates();
  await writeLongHistory(folder, {
    years: 3,
    now: Date.now(),
    invent,
    piecesAYear: 200,
    invented: 10,
  });
  const terminal = openTerminal({ folder });
  await terminal.firstFrame();
  await terminal.press('m');
  await terminal.shows('600 finished pieces');
  terminal.write(keys.left);
  await terminal.shows('> working');
  terminal.write(keys.left);
  await terminal.shows('Every step foretold anew');
  await terminal.until('a progress line', () =>
    /past steps .* of \d+ {2}s: stop/.test(terminal.screen()),
  );
  // A key is heard while it runs.
  terminal.write(keys.down);
  terminal.write('s');
  await terminal.shows('Stopped after');
  const told = /Stopped after (\d+) of (\d+) steps/.exec(terminal.screen());
  expect(Number(told?.[1])).toBeLessThan(Number(told?.[2]));
  terminal.write('s');
  await terminal.until('the whole of it', () => / in 100 held: /.test(terminal.screen()));
  await terminal.showsNot('s: stop');
  // Left while it reads, the program ends without waiting for it.
  await terminal.press(keys.escape);
  terminal.write('m');
  await terminal.until('the hours', () => terminal.screen().includes('hours:'));
  terminal.write(keys.controlC);
  expect((await terminal.ends()).code).toBe(0);
});
