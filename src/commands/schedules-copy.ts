import { readdir, readFile } from 'node:fs/promises';
import { join } from 'node:path';
import { pathToFileURL } from 'node:url';
import { scheduleFolders } from '../shell/port.ts';
import type { CopiedJson } from './json-shapes/index.ts';
import { failure, isFailure, type CommandFile } from './line/command.ts';
import { findSchedule } from './read/find-schedule.ts';
import { writeOwn } from './write-own.ts';

export const schedulesCopy: CommandFile = {
  takes: '<id>',
  help: 'The copy has the same id, so it takes the place of the original until you give it another.',
  run: async (room, given) => {
    const schedule = await findSchedule(given.word('id'), 'Not copied', room);
    if (isFailure(schedule)) return schedule;
    const { templates, own } = scheduleFolders(room.world, room.folder);
    const text = await templateOf(schedule.id, join(templates, 'schedules'));
    if (text === null || own === null)
      return failure('refused', `Not copied: ${schedule.id} is a file of your own already.`);
    const file = join(own, `${schedule.id}.yaml`);
    const schema = pathToFileURL(join(templates, 'schema', 'schedule.json')).href;
    const bad = await writeOwn(file, text.replace(/(\$schema=)\S+/, `$1${schema}`));
    if (bad !== null) return bad;
    return {
      lines: () => [
        `copied to ${file}`,
        'As long as it is there, pieces added from now on take this one.',
      ],
      json: (): CopiedJson => ({ copied: schedule.id, file }),
    };
  },
};

/** The text of the program's own schedule with that id. */
async function templateOf(id: string, folder: string): Promise<string | null> {
  for (const name of await readdir(folder)) {
    const text = await readFile(join(folder, name), 'utf8');
    if (/^id:\s*(\S+)\s*$/m.exec(text)?.[1] === id) return text;
  }
  return null;
}
