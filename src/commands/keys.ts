import { keyMapWith } from '../views/keys/key-map.ts';
import { keysSheet } from '../views/keys-sheet/keys-sheet.ts';
import type { KeysJson } from './json-shapes/index.ts';
import { isFailure, type CommandFile } from './line/command.ts';
import { look } from './line/look.ts';
import { plainLines, textView } from './text/text-view.ts';

export const keys: CommandFile = {
  run: async (room) => {
    const shop = await look(room);
    if (isFailure(shop)) return shop;
    return {
      lines: () => plainLines(keysSheet(0, textView(shop)).body),
      json: (): KeysJson => ({
        keys: keyMapWith(shop.settings.keys).map(({ act, keys: own, says, listed }) => ({
          act,
          keys: own,
          says,
          listed: listed ?? null,
        })),
      }),
    };
  },
};
