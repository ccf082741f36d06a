import { hoursOfFinished, hoursOfPiece } from '../tracker/estimate/index.ts';
import { finishedHoursJson, pieceHoursJson } from './json/hours-json.ts';
import { isFailure, type Answer, type CommandFile, type Failure } from './line/command.ts';
import { csvOption, twoForms } from './line/forms.ts';
import { lookBack } from './line/look-back.ts';
import type { Room } from './line/room.ts';
import { lookFor } from './names/look-for.ts';
import { csvLines } from './text/csv-lines.ts';
import { hoursRows } from './text/hours-csv.ts';
import { finishedHoursLines, pieceHoursLines } from './text/hours-lines.ts';

export const hours: CommandFile = {
  takes: '[piece]',
  options: [csvOption],
  help: 'Without a piece: over all that are finished, by step class, finishing schedule and month, their past ranges, and what the hours went into. As CSV a row for each of their steps.',
  run: (room, given) => {
    const clash = twoForms(given, ['csv', 'json']);
    if (clash !== null) return clash;
    const typed = given.maybe('piece');
    const asCsv = given.has('csv');
    return typed === null ? overFinished(room, asCsv) : ofPiece(typed, room, asCsv);
  },
};

async function overFinished(room: Room, asCsv: boolean): Promise<Answer | Failure> {
  const all = await lookBack(room);
  if (isFailure(all)) return all;
  const finished = hoursOfFinished([all.bench], all.now);
  const csv = asCsv ? await csvLines(hoursRows(finished.pieces)) : null;
  return {
    lines: () => csv ?? finishedHoursLines(finished, all),
    json: () => finishedHoursJson(finished, all.shop.zone),
  };
}

async function ofPiece(typed: string, room: Room, asCsv: boolean): Promise<Answer | Failure> {
  const found = await lookFor(typed, 'Not shown', room);
  if (isFailure(found)) return found;
  const { piece, shop } = found;
  const own = hoursOfPiece(shop.bench, piece, shop.now);
  const csv = asCsv ? await csvLines(hoursRows([own])) : null;
  return { lines: () => csv ?? pieceHoursLines(own, shop), json: () => pieceHoursJson(own) };
}
