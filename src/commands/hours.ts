import { hoursOfFinished, hoursOfPiece } from '../tracker/estimate/index.ts';
import { backTest, lessonsOf, notTaught, teachImports } from '../tracker/learning/index.ts';
import { reviewOf, type Review } from '../tracker/review/index.ts';
import { monthIn } from '../views/format/index.ts';
import { backTestJson, finishedHoursJson, pieceHoursJson } from './json/hours-json.ts';
import {
  failure,
  isFailure,
  type Answer,
  type CommandFile,
  type Failure,
  type Given,
} from './line/command.ts';
import { csvOption, twoForms } from './line/forms.ts';
import { lookBack } from './line/look-back.ts';
import type { Room } from './line/room.ts';
import { lookFor } from './names/look-for.ts';
import { csvLines } from './text/csv-lines.ts';
import { hoursRows } from './text/hours-csv.ts';
import { backTestLines, finishedHoursLines, pieceHoursLines } from './text/hours-lines.ts';

export const hours: CommandFile = {
  takes: '[piece]',
  options: [
    csvOption,
    ['--back-test', 'every past step foretold anew: whether the ranges would have held'],
  ],
  help: 'Without a piece: over all that are finished, by step class, finishing schedule and month, their past ranges, and what the hours went into. As CSV a row for each of their steps.',
  run: (room, given) => {
    const clash = twoForms(given, ['csv', 'json']);
    if (clash !== null) return clash;
    const typed = given.maybe('piece');
    if (given.has('back-test')) return typed === null ? backTested(given, room) : overAllOnly;
    const asCsv = given.has('csv');
    return typed === null ? overFinished(room, asCsv) : ofPiece(typed, room, asCsv);
  },
};

async function overFinished(room: Room, asCsv: boolean): Promise<Answer | Failure> {
  const all = await lookBack(room);
  if (isFailure(all)) return all;
  const finished = hoursOfFinished([all.bench], all.now);
  const csv = asCsv ? await csvLines(hoursRows(finished.pieces)) : null;
  const { zone } = all.shop;
  const review = (): Review => reviewOf(finished, monthIn(zone));
  return {
    lines: () => csv ?? finishedHoursLines(review(), all),
    json: () => finishedHoursJson(review(), zone),
  };
}

const overAllOnly = failure(
  'usage',
  'Not shown: a back-test is over all pieces. Leave the piece out: recoat hours --back-test',
);

/** So many steps between two looks at how far it is. */
const stepsAtATime = 1000;

/** Ctrl+C ends it at any step: it writes nothing. */
async function backTested(given: Given, room: Room): Promise<Answer | Failure> {
  const clash = twoForms(given, ['csv', 'back-test']);
  if (clash !== null) return clash;
  const all = await lookBack(room);
  if (isFailure(all)) return all;
  const { bench } = all;
  const { progress } = room.world;
  const { minutes } = teachImports(notTaught, bench.imports ?? []);
  const running = backTest(lessonsOf(bench), minutes, stepsAtATime);
  let step = running.next();
  while (step.done !== true) {
    const { done, of } = step.value;
    progress?.(`foretelling past steps anew, ${done} of ${of}, Ctrl+C stops`);
    step = running.next();
  }
  progress?.('');
  const result = step.value;
  return { lines: () => backTestLines(result, all), json: () => backTestJson(result) };
}

async function ofPiece(typed: string, room: Room, asCsv: boolean): Promise<Answer | Failure> {
  const found = await lookFor(typed, 'Not shown', room);
  if (isFailure(found)) return found;
  const { piece, shop } = found;
  const own = hoursOfPiece(shop.bench, piece, shop.now);
  const csv = asCsv ? await csvLines(hoursRows([own])) : null;
  return { lines: () => csv ?? pieceHoursLines(own, shop), json: () => pieceHoursJson(own) };
}
