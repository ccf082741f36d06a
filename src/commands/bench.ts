import { benchJson } from './json/bench-json.ts';
import { isFailure, type CommandFile } from './line/command.ts';
import { tellOfLostKeeper } from './line/lost-keeper.ts';
import { look } from './line/look.ts';
import { benchLines } from './text/bench-lines.ts';

export const bench: CommandFile = {
  run: async (room) => {
    const shop = await look(room);
    if (isFailure(shop)) return shop;
    tellOfLostKeeper(room);
    return { lines: () => benchLines(shop), json: () => benchJson(shop) };
  },
};
