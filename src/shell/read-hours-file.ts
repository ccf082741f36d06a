import { readFile } from 'node:fs/promises';
import { join, resolve } from 'node:path';
import type { HoursFile } from '../persist/hours-import/read-hours.ts';
import type { Instant } from '../tracker/time/index.ts';
import { instantOfClock, shopDay, type Zone } from '../views/format/index.ts';
import type { World } from './world.ts';

/** Ten years of steps are less than a tenth of it. */
const largestFile = 5_000_000;

/**
 * Reads a file of hours that were kept elsewhere. A path counts from where the program was started; `~/` is the home
 * folder, as no shell stands between a screen and what is typed into it.
 *
 * @returns what is in it, also what is wrong with its lines; or, where it can't be read, a refusal in words
 */
export async function readHoursFile(
  file: string,
  { cwd, home }: Pick<World, 'cwd' | 'home'>,
  { now, zone }: { readonly now: Instant; readonly zone: Zone },
): Promise<HoursFile | { readonly refused: string }> {
  let text: string;
  try {
    const path = file.startsWith('~/') ? join(home, file.slice(2)) : resolve(cwd, file);
    text = await readFile(path, 'utf8');
  } catch (thrown) {
    const reason = thrown instanceof Error && 'code' in thrown ? String(thrown.code) : '';
    return {
      refused: `Not taken: ${file} can't be read (${reason}). Check its name and that you may read it.`,
    };
  }
  if (text.length > largestFile)
    return { refused: `Not taken: ${file} is longer than 5 MB. Give it in several files.` };
  // The reader of such files is loaded only here.
  const { readHours } = await import('../persist/hours-import/read-hours.ts');
  return readHours(file, text, {
    today: shopDay(now, zone),
    noonOf: (day) => Math.min(now, instantOfClock(day, '12:00', zone)),
  });
}
