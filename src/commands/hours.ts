import { hoursOfFinished, hoursOfPiece } from '../tracker/estimate/index.ts';
import { finishedHoursJson, pieceHoursJson } from './json/hours-json.ts';
import { isFailure, type CommandFile } from './line/command.ts';
import { lookBack } from './line/look-back.ts';
import { findAnywhere } from './names/find-anywhere.ts';
import { finishedHoursLines, pieceHoursLines } from './text/hours-lines.ts';

export const hours: CommandFile = {
  takes: '[piece]',
  help: 'Without a piece: over all that are finished.',
  run: async (room, given) => {
    const all = await lookBack(room);
    if (isFailure(all)) return all;
    const { bench, now, shop } = all;
    const typed = given.maybe('piece');
    if (typed === null) {
      const finished = hoursOfFinished([bench], now);
      return {
        lines: () => finishedHoursLines(finished, all),
        json: () => finishedHoursJson(finished, shop.zone),
      };
    }
    const piece = findAnywhere(typed, bench, shop.zone, 'Not shown');
    if (isFailure(piece)) return piece;
    const own = hoursOfPiece(bench, piece, now);
    return { lines: () => pieceHoursLines(own, all), json: () => pieceHoursJson(own) };
  },
};
