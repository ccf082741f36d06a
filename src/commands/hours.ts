import { hoursOfFinished, hoursOfPiece } from '../tracker/estimate/index.ts';
import { finishedHoursJson, pieceHoursJson } from './json/hours-json.ts';
import { isFailure, type Answer, type CommandFile, type Failure } from './line/command.ts';
import { lookBack } from './line/look-back.ts';
import type { Room } from './line/room.ts';
import { lookFor } from './names/look-for.ts';
import { finishedHoursLines, pieceHoursLines } from './text/hours-lines.ts';

export const hours: CommandFile = {
  takes: '[piece]',
  help: 'Without a piece: over all that are finished, by step class, finishing schedule and month, their past ranges, and what the hours went into.',
  run: (room, given) => {
    const typed = given.maybe('piece');
    return typed === null ? overFinished(room) : ofPiece(typed, room);
  },
};

async function overFinished(room: Room): Promise<Answer | Failure> {
  const all = await lookBack(room);
  if (isFailure(all)) return all;
  const finished = hoursOfFinished([all.bench], all.now);
  return {
    lines: () => finishedHoursLines(finished, all),
    json: () => finishedHoursJson(finished, all.shop.zone),
  };
}

async function ofPiece(typed: string, room: Room): Promise<Answer | Failure> {
  const found = await lookFor(typed, 'Not shown', room);
  if (isFailure(found)) return found;
  const { piece, shop } = found;
  const own = hoursOfPiece(shop.bench, piece, shop.now);
  return { lines: () => pieceHoursLines(own, shop), json: () => pieceHoursJson(own) };
}
