import { readdir, readFile } from 'node:fs/promises';
import { resolve } from 'node:path';
import {
  readRules,
  readScheduleFolders,
  rulesBeside,
  tellProblems,
} from '../persist/schedules/index.ts';
import { scheduleFolders } from '../shell/port.ts';
import { problemJson } from './json/problem-json.ts';
import type { CheckedJson } from './json-shapes/index.ts';
import { failure, type Answer, type CommandFile } from './line/command.ts';
import { exitCodes } from './line/exit-codes.ts';
import type { Room } from './line/room.ts';

export const schedulesCheck: CommandFile = {
  takes: '[file]',
  help: 'Reads a finishing schedule or products file as if it lay in your folder, without FILE all that lie there, and says what is wrong, where, and what was expected. Nothing is changed.',
  run: async (room, given) => {
    const { world } = room;
    const file = given.maybe('file');
    if (file === null) return checkOwn(room);
    let text: string;
    try {
      text = await readFile(resolve(world.cwd, file), 'utf8');
    } catch (thrown) {
      const reason = thrown instanceof Error && 'code' in thrown ? String(thrown.code) : '';
      return failure(
        'refused',
        `Not checked: ${file} can't be read (${reason}). Check its name and that you may read it.`,
      );
    }
    const folders = scheduleFolders(world, null);
    const shipped = await readScheduleFolders(folders);
    const { rules } = await readRules(rulesBeside(folders));
    // The YAML parser is loaded only here.
    const { loadSchedules } = await import('../persist/schedules/parsing.ts');
    const library = loadSchedules([{ path: file, text, own: true }], shipped, rules.over);
    const problems = library.problems.filter((problem) => problem.file === file);
    return {
      ...(problems.length === 0 ? {} : { code: exitCodes.refused }),
      lines: () => [
        ...(problems.length === 0 ? [`${file}: nothing wrong.`] : tellProblems(problems)),
        ...library.replacements.map(({ says }) => says),
        ...tellProblems(library.remarks),
      ],
      json: (): CheckedJson => ({
        file,
        problems: problems.map(problemJson),
        remarks: library.remarks.map(problemJson),
      }),
    };
  },
};

/** All files of one's own folder together, as they lie there. */
async function checkOwn(room: Room): Promise<Answer> {
  const folders = scheduleFolders(room.world, room.folder);
  const folder = folders.own ?? '';
  const { problems, replacements, remarks } = await readScheduleFolders(folders);
  const wrong = problems.filter(({ file }) => file.startsWith(folder));
  const names = await readdir(folder).catch((): string[] => []);
  const files = names.filter((name) => /\.ya?ml$/.test(name)).length;
  const counted = `${files} file${files === 1 ? '' : 's'}`;
  return {
    ...(wrong.length === 0 ? {} : { code: exitCodes.refused }),
    lines: () => [
      ...tellProblems(wrong),
      ...(wrong.length > 0
        ? []
        : [
            files === 0
              ? `${folder}: no files of yours yet.`
              : `${folder}: nothing wrong in ${counted}.`,
          ]),
      ...replacements.map(({ says }) => says),
      ...tellProblems(remarks),
    ],
    json: (): CheckedJson => ({
      file: folder,
      problems: wrong.map(problemJson),
      remarks: remarks.map(problemJson),
    }),
  };
}
