import { jobCard as cardOf } from '../tracker/bench/index.ts';
import { jobCardJson } from './json/job-card-json.ts';
import { isFailure, type CommandFile } from './line/command.ts';
import { lookBack } from './line/look-back.ts';
import { findAnywhere } from './names/find-anywhere.ts';
import { jobCardLines } from './text/job-card-lines.ts';

export const jobCard: CommandFile = {
  takes: '<piece>',
  run: async (room, given) => {
    const all = await lookBack(room);
    if (isFailure(all)) return all;
    const { bench, now, sense, shop } = all;
    const piece = findAnywhere(given.word('piece'), bench, shop.zone, 'Not shown');
    if (isFailure(piece)) return piece;
    const card = cardOf(bench, piece, now, sense);
    return { lines: () => jobCardLines(card, all), json: () => jobCardJson(card, all) };
  },
};
