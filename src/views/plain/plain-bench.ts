import { inHand, labelOf, standingsAt, type Standing } from '../../tracker/bench/index.ts';
import { ragsFrom } from '../../tracker/overnight/index.ts';
import { dryingPaceAt, readingHoldsFor } from '../../tracker/windows/index.ts';
import { nextCalls } from '../bench/next-calls.ts';
import { padEnd, padStart, width } from '../drawing/index.ts';
import { visible } from '../drawing/visible.ts';
import {
  air,
  callWords,
  clock,
  dewPoint,
  dryingWords,
  fullDay,
  minutesSpent,
  shopDay,
  thenWords,
  whenInWords,
} from '../format/index.ts';
import { calledPiece } from '../parts/called-piece.ts';
import { ragQuestion } from '../shut-up-shop/question-words.ts';
import { callingLoudly, type PlainInput } from './plain-input.ts';
import { standingWords } from './standing-words.ts';

/** The bench as text, for a pipe, a file, or where there is no terminal: the same columns however wide that is. */
export function plainBench(input: PlainInput): string {
  const { bench, now, sense, obstacle, keeper } = input;
  const all = standingsAt(bench, now, sense);
  const told = [
    titleLine(input, all),
    ...callingLoudly(input).map(({ text }) => `Loud: ${text}`),
    ...nextLine(all, input),
    ...inHandLine(input),
    ...(all.length === 0 ? ['The bench is empty.'] : ['', ...table(all, input)]),
    ...(keeper === 'there' ? ['', 'A keeper stands by and pings while no screen is open.'] : []),
    ...ragLine(bench),
    ...(obstacle === null ? [] : ['', `${obstacle.says} ${obstacle.todo}`]),
  ];
  return told.map((line) => visible(line).trimEnd()).join('\n');
}

function ragLine(bench: PlainInput['bench']): readonly string[] {
  const pieces = ragsFrom(bench);
  return pieces.length === 0
    ? []
    : ['', `Oily rags from ${pieces.map(calledPiece).join(', ')}: ${ragQuestion}`];
}

function titleLine({ now, shop, readings, sense }: PlainInput, all: readonly Standing[]): string {
  const reading = readings.at(-1);
  const conditions =
    reading === undefined
      ? 'no reading yet'
      : [
          `${air(reading, shop.temperature)} read ${whenInWords(reading.at, now, shop)}${now - reading.at > readingHoldsFor ? ', old' : ''}`,
          `dew point ${dewPoint(reading, shop.temperature)}`,
          dryingWords(
            dryingPaceAt(
              all.flatMap((standing) => standing.windows),
              now,
              sense,
            ),
          ),
        ]
          .filter((words) => words !== '')
          .join(', ');
  return `Bench, ${fullDay(shopDay(now, shop.zone))} ${clock(now, shop)}, ${conditions}`;
}

function nextLine(all: readonly Standing[], { now, shop }: PlainInput): readonly string[] {
  const next = nextCalls(all, now)[0];
  if (next === undefined) return [];
  const { piece, window } = next;
  const who = piece === null ? labelOf(next) : calledPiece(piece);
  const call = callWords(window, now, shop);
  const then = thenWords(window, now, shop);
  // What is late is called by what it costs; that is said once.
  const adds = then !== '' && !call.endsWith(then);
  return [`Next: ${who}: ${call}${adds ? `; ${then}` : ''}`];
}

function inHandLine({ bench, now, shop }: PlainInput): readonly string[] {
  return inHand(bench).map(({ targets, start }) => {
    const works = targets.flatMap(({ piece: id, step }) => {
      const piece = bench.pieces.get(id);
      if (piece === undefined) return [];
      const name = piece.steps.find((each) => each.id === step)?.name ?? 'other work';
      return [`${calledPiece(piece)}, ${name}`];
    });
    const spent = minutesSpent(now - start);
    return `In hand: ${works.join(' and ')}, ${spent} since ${whenInWords(start, now, shop)}`;
  });
}

function table(all: readonly Standing[], input: PlainInput): readonly string[] {
  const rows = all.map((standing) => {
    const { number, name, state, when, step, then } = standingWords(standing, input);
    return {
      number,
      name,
      state: `${state} ${when}`.trim(),
      then: [step, then].filter((each) => each !== '').join('; '),
    };
  });
  const cells = (texts: readonly string[]): number => Math.max(...texts.map(width));
  const numbers = cells(rows.map(({ number }) => number));
  const names = cells(rows.map(({ name }) => name));
  const states = cells(rows.map(({ state }) => state));
  return rows.map(({ number, name, state, then }) =>
    [padStart(number, numbers), padEnd(name, names), padEnd(state, states), then].join('  '),
  );
}
