import { jobCard as cardOf } from '../tracker/bench/index.ts';
import { jobCardJson } from './json/job-card-json.ts';
import { isFailure, type CommandFile } from './line/command.ts';
import { lookFor } from './names/look-for.ts';
import { jobCardLines } from './text/job-card-lines.ts';

export const jobCard: CommandFile = {
  takes: '<piece>',
  run: async (room, given) => {
    const found = await lookFor(given.word('piece'), 'Not shown', room);
    if (isFailure(found)) return found;
    const { piece, shop } = found;
    const card = cardOf(shop.bench, piece, shop.now, shop.sense);
    return { lines: () => jobCardLines(card, shop), json: () => jobCardJson(card, shop) };
  },
};
