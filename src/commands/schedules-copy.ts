import { readdir, readFile } from 'node:fs/promises';
import { join } from 'node:path';
import { pathToFileURL } from 'node:url';
import { scheduleFolders } from '../shell/port.ts';
import type { CopiedJson } from './json-shapes/index.ts';
import { failure, isFailure, type CommandFile } from './line/command.ts';
import { findSchedule } from './read/find-schedule.ts';
import { writeOwn } from './write-own.ts';

export const schedulesCopy: CommandFile = {
  takes: '<id> [new-id]',
  help: 'Without a NEW-ID the copy has the same id and takes the place of the original; with one both are there.',
  run: async (room, given) => {
    const schedule = await findSchedule(given.word('id'), 'Not copied', room);
    if (isFailure(schedule)) return schedule;
    const newId = given.maybe('new-id') ?? schedule.id;
    if (!idForm.test(newId))
      return failure(
        'usage',
        `Not copied: an id is small letters, figures and dashes, such as my-${schedule.id}.`,
      );
    const { templates, own } = scheduleFolders(room.world, room.folder);
    const text = await templateOf(schedule.id, join(templates, 'schedules'));
    if (text === null || own === null)
      return failure('refused', `Not copied: ${schedule.id} is a file of your own already.`);
    const file = join(own, `${newId}.yaml`);
    const schema = pathToFileURL(join(templates, 'schema', 'schedule.json')).href;
    const bad = await writeOwn(file, copied(text, newId, schema));
    if (bad !== null) return bad;
    return {
      lines: () => [
        `copied to ${file}`,
        newId === schedule.id
          ? 'As long as it is there, pieces added from now on take this one.'
          : `Add a piece by it with --schedule ${newId}.`,
      ],
      json: (): CopiedJson => ({ copied: newId, file }),
    };
  },
};

const idForm = /^[a-z0-9]+(-[a-z0-9]+)*$/;

/** The text with its new id, and with the schema where the user's editor finds it. */
const copied = (text: string, id: string, schema: string): string =>
  text.replace(/(\$schema=)\S+/, `$1${schema}`).replace(/^id:.*$/m, `id: ${id}`);

/** The text of the program's own schedule with that id. */
async function templateOf(id: string, folder: string): Promise<string | null> {
  for (const name of await readdir(folder)) {
    const text = await readFile(join(folder, name), 'utf8');
    if (/^id:\s*(\S+)\s*$/m.exec(text)?.[1] === id) return text;
  }
  return null;
}
