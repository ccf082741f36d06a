import { stepsJson } from './json/steps-json.ts';
import { isFailure, type CommandFile } from './line/command.ts';
import { look } from './line/look.ts';
import { findOnBench } from './names/find-piece.ts';
import { stepLines } from './text/step-lines.ts';

export const steps: CommandFile = {
  takes: '<piece>',
  run: async (room, given) => {
    const shop = await look(room);
    if (isFailure(shop)) return shop;
    const piece = findOnBench(given.word('piece'), shop.bench, 'Not shown');
    if (isFailure(piece)) return piece;
    return { lines: () => stepLines(piece, shop), json: () => stepsJson(piece, shop) };
  },
};
