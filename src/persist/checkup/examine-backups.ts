import { join } from 'node:path';
import type { Instant } from '../../tracker/time/index.ts';
import { presentForm } from '../file/form.ts';
import { backupFolder, benchFile } from '../folder/names.ts';
import { inspect } from '../reading/inspect.ts';
import { backupNames } from '../reading/leftovers.ts';
import { checkContents } from '../schemas/check.ts';
import { findingsAbout, type Finding } from './finding.ts';

const { fine, note, wrong } = findingsAbout('backups');
const day = 86_400_000;

/**
 * How many daily backups there are, whether the newest is as new as it should be, and whether it can be read.
 *
 * @param changed when the bench was last told something; null where that isn't known
 */
export function examineBackups(folder: string, changed: Instant | null): readonly Finding[] {
  const names = backupNames(folder);
  const [newest] = names;
  if (newest === undefined)
    return changed === null
      ? []
      : [note('There is no backup yet: the first is made at the first change of the next day.')];
  const found = inspect(
    join(folder, backupFolder, newest),
    benchFile.holds,
    presentForm,
    checkContents,
  );
  if (!found.ok || found.value.is !== 'fine')
    return [
      wrong(
        `${backupFolder}/${newest}, the newest of ${names.length} backups, can't be read${reasonOf(found)}.`,
        names.length > 1
          ? `Move it away; ${names[1] ?? ''} is the one before.`
          : 'Move it away; the next change makes a new one.',
      ),
    ];
  const counted = names.length === 1 ? 'One backup' : `${names.length} backups`;
  const says = `${counted}; the newest, ${newest}, reads: ${found.value.contents.length} facts.`;
  const madeOn = Date.parse(/\d{4}-\d{2}-\d{2}/.exec(newest)?.[0] ?? '');
  // Days are the shop's, in any zone; a day without a change has no backup, but its next change makes one.
  return changed !== null && changed >= madeOn + 2 * day + day / 2
    ? [
        fine(says),
        wrong(
          `The bench was changed on ${new Date(changed).toISOString().slice(0, 10)}, and no backup was made of it since ${newest}.`,
          `Check that ${join(folder, backupFolder)} can be written and its disk has room.`,
        ),
      ]
    : [fine(says)];
}

const reasonOf = (found: ReturnType<typeof inspect>): string =>
  found.ok && found.value.is === 'damaged' ? `: ${found.value.damage.says}` : '';
