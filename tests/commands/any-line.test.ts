import fc from 'fast-check';
import { expect, it } from 'vitest';
import { exitCodes } from '../../src/commands/line/exit-codes.ts';
import { commands } from '../../src/commands/line/table.ts';
import { openShop } from './support/shop.ts';

/** Words that mean something to one command or another, and some that mean nothing to any. */
const words = fc.oneof(
  fc.constantFrom(
    ...['1', '2', '3', 'Oak', 'oak chest', 'clamps', '35min', '-5', '1:99', '90x', '', ' ', '--'],
    ...['--part', '--step', '--at', '--ago', '--with', '--before', '--yes', '--other', '--json'],
    ...['14:02', 'yesterday 9:00', '10min', 'paint-and-wax', '--schedule', 'standard', '66F 55%'],
    ...['in-clamps', 'case', '--zone', 'UTC', '--drop', '--start', '-15', '--all', '--find'],
  ),
  fc.string({ maxLength: 6 }),
);

const lines = fc.tuple(
  // Copying, exporting and checking touch files of the user's by the names that are typed; a checkup tells what is wrong in
  // its answer.
  fc.constantFrom(
    ...Object.keys(commands).filter(
      (name) => !/^(schedules |product |export$|checkup$)/.test(name),
    ),
  ),
  fc.array(words, { maxLength: 4 }),
);

it('ends with one of its codes and a sentence, whatever is typed', async () => {
  const codes: readonly number[] = Object.values(exitCodes);
  await fc.assert(
    fc.asyncProperty(fc.array(lines, { minLength: 1, maxLength: 12 }), async (all) => {
      const shop = openShop();
      await shop.does('add', 'Oak chest', '--schedule', 'glue-up-repair');
      await shop.does('pick-up', '1');
      for (const [name, given] of all) {
        // A folder or zone typed by chance would lead elsewhere.
        const typed = given.filter((word) => !word.startsWith('--folder'));
        shop.minutesLater(7);
        const { code, out, err } = await shop.run([name, ...typed]);
        const line = JSON.stringify([name, ...typed]);
        expect(codes, line).toContain(code);
        if (code === exitCodes.done) expect(out, line).not.toBe('');
        else expect(err, line).toMatch(/^Not [a-z ]+: /);
      }
      const { rows } = await shop.json('bench');
      expect(Array.isArray(rows)).toBe(true);
      // However often, taking everything back leaves the bench empty.
      for (let left = 60; left > 0; left -= 1)
        if ((await shop.run(['take-back'])).code !== exitCodes.done) break;
      expect((await shop.json('bench')).rows).toEqual([]);
    }),
    { numRuns: 25 },
  );
}, 60_000);
