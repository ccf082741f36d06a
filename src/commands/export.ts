import { resolve } from 'node:path';
import { presentForm } from '../persist/file/form.ts';
import type { Exported } from '../persist/transfer/index.ts';
import { scheduleFolders } from '../shell/port.ts';
import { transferHolds, transferWords } from './json/transfer-json.ts';
import type { TransferJson } from './json-shapes/index.ts';
import { isFailure, type CommandFile } from './line/command.ts';
import { noticeText, openToRead, storeFailure } from './line/look.ts';
import { writeNamed } from './write-named.ts';

export const exportStore: CommandFile = {
  takes: '[file]',
  help: 'Bench, years gone by, readings, pings, settings, and schedules and products of your own. Without a file it is printed. It goes back in with: recoat import FILE',
  run: async (room, given) => {
    const opened = await openToRead(room);
    if (isFailure(opened)) return opened;
    // Loaded only here: they bring the schemas along.
    const { exportText, gather } = await import('../persist/transfer/index.ts');
    const { own } = scheduleFolders(room.world, room.folder);
    const gathered = await gather(opened, own ?? '');
    if (!gathered.ok) return storeFailure(gathered.problem);
    const { exported, notices } = gathered.value;
    notices.forEach((notice) => room.tell(noticeText(notice)));
    const text = exportText(presentForm.current, exported);
    const typed = given.maybe('file');
    if (typed === null)
      return {
        lines: () => text.trimEnd().split('\n'),
        json: () => shapeOf(exported, null, text),
      };
    const path = resolve(room.world.cwd, typed);
    const bad = writeNamed(path, text, { is: 'exported store', has: isExport });
    if (bad !== null) return bad;
    return {
      lines: () => [`exported to ${path}: ${transferWords(exported)}`],
      json: () => shapeOf(exported, path, null),
    };
  },
};

const isExport = (before: string): boolean => /^\{"recoat":\d+,"export":\{/.test(before);

const shapeOf = (exported: Exported, file: string | null, text: string | null): TransferJson => ({
  file,
  text,
  changed: false,
  holds: transferHolds(exported),
});
