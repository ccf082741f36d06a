import { readFileSync, statSync } from 'node:fs';
import { resolve } from 'node:path';
import { presentForm } from '../persist/file/form.ts';
import { scheduleFolders } from '../shell/port.ts';
import { transferHolds, transferWords } from './json/transfer-json.ts';
import type { TransferJson } from './json-shapes/index.ts';
import { failure, isFailure, type CommandFile, type Failure } from './line/command.ts';
import { noticeText, storeFailure } from './line/look.ts';
import { withStore } from './line/record.ts';

export const importStore: CommandFile = {
  takes: '<file>',
  beginsStore: true,
  help: 'Two records of two shops do not add up to one. A file that is damaged is refused whole. Importing the same file again changes nothing.',
  run: async (room, given) => {
    const path = resolve(room.world.cwd, given.word('file'));
    const bytes = bytesOf(path);
    if (isFailure(bytes)) return bytes;
    // Loaded only here: they bring the schemas along.
    const { putIn, readExport } = await import('../persist/transfer/index.ts');
    const read = readExport(path, bytes, presentForm);
    if (!read.ok) return failed(read.problem);
    const { own } = scheduleFolders(room.world, room.folder);
    return withStore(room, (store) => {
      const put = putIn(store, own ?? '', read.value, path);
      if (!put.ok) return failed(put.problem);
      const { changed, notices } = put.value;
      notices.forEach((notice) => room.tell(noticeText(notice)));
      const holds = transferWords(read.value);
      return {
        lines: () => [
          changed
            ? `imported from ${path}: ${holds}`
            : `Everything in ${path} is there already; nothing was changed.`,
        ],
        json: (): TransferJson => ({
          file: path,
          text: null,
          changed,
          holds: transferHolds(read.value),
        }),
      };
    });
  },
};

/** What lies in the file that was named speaks against it, not the store. */
const failed = (problem: Parameters<typeof storeFailure>[0]): Failure =>
  ['damaged', 'newer', 'not empty'].includes(problem.kind)
    ? { ...storeFailure(problem), failed: 'refused' }
    : storeFailure(problem);

function bytesOf(path: string): Buffer | Failure {
  const not = (why: string): Failure =>
    failure('refused', `Not imported: ${path} can't be read (${why}). Check its name and rights.`);
  try {
    return statSync(path).isFile() ? readFileSync(path) : not('it is no plain file');
  } catch (error) {
    return not(error instanceof Error && 'code' in error ? String(error.code) : String(error));
  }
}
