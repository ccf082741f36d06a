import { windowsOf } from '../bench/piece-windows.ts';
import type { Piece, PlannedStep } from '../bench/piece.ts';
import { inHand, piecesOnBench } from '../bench/standing.ts';
import type { Instant } from '../time/index.ts';
import { opensAt, stateAt } from '../windows/evaluate.ts';
import type { Window } from '../windows/model.ts';
import type { Caution } from './caution.ts';
import type { Moment } from './chemicals.ts';

const practice = 'common practice, no source';

/** What goes on beside a step that its dust or fumes would reach, or that would reach it. */
export function neighbourCautions(
  piece: Piece,
  step: PlannedStep,
  moment: Moment,
): readonly Caution[] {
  return [
    ...(step.dusty === true ? tackyBeside(piece, step, moment) : []),
    ...(step.cleanAir === true ? dustBeside(piece, moment) : []),
    ...fumesBeside(piece, moment),
  ];
}

/** Coats that are not dust-free: on other pieces, and on other parts of this one. */
function tackyBeside(piece: Piece, step: PlannedStep, moment: Moment): readonly Caution[] {
  const tacky = piecesOnBench(moment.bench).flatMap((other) => {
    const until = tackyTill(other, other.id === piece.id ? step : null, moment);
    return until === null
      ? []
      : [{ called: other.number === null ? other.name : String(other.number), until }];
  });
  if (tacky.length === 0) return [];
  const verb = step.stepClass.startsWith('sand') || step.stepClass === 'scuff' ? 'sand' : 'work';
  return [
    {
      id: 'tacky',
      says: `${listed(tacky.map(({ called }) => called))} tacky`,
      until: Math.max(...tacky.map(({ until }) => until)),
      then: `${verb} outside`,
      deadly: false,
      ofTheMoment: true,
      source: practice,
    },
  ];
}

const knownDustFree = new WeakMap<readonly Window[], readonly Window[]>();

/** A piece has few of them among all its windows, which stay the same list until they change. */
function dustFreeOf(windows: readonly Window[]): readonly Window[] {
  let few = knownDustFree.get(windows);
  if (few === undefined) {
    few = windows.filter(({ rule }) => rule.milestone === 'dust-free');
    knownDustFree.set(windows, few);
  }
  return few;
}

/** Until when dust sticks to a piece; null where none does. A coat that the step itself works on is its own affair. */
function tackyTill(
  piece: Piece,
  worked: PlannedStep | null,
  { bench, now, sense }: Moment,
): Instant | null {
  const drying = dustFreeOf(windowsOf(bench, piece, sense)).filter(
    (window) =>
      (worked === null || window.subject.partId !== null) &&
      stateAt({ ...window, closedAt: null }, now) === 'before',
  );
  const last = Math.max(...drying.map((window) => opensAt(window) ?? now));
  return drying.length === 0 ? null : last;
}

/** What other hands are at. */
function beside(
  piece: Piece,
  { bench }: Moment,
  is: (step: PlannedStep) => boolean,
): readonly { readonly piece: Piece; readonly step: PlannedStep }[] {
  return inHand(bench)
    .flatMap(({ targets }) => targets)
    .filter((target) => target.piece !== piece.id)
    .flatMap((target) => {
      const other = bench.pieces.get(target.piece);
      const step = other?.steps.find(({ id }) => id === target.step);
      return other === undefined || step === undefined || !is(step) ? [] : [{ piece: other, step }];
    });
}

const dustBeside = (piece: Piece, moment: Moment): readonly Caution[] =>
  beside(piece, moment, ({ dusty }) => dusty === true).map(({ piece: other, step }) => ({
    id: 'dust in the air',
    says: `${other.number ?? ''} ${other.name} makes dust now (${step.name}): wait till it has settled, or coat elsewhere`,
    deadly: false,
    ofTheMoment: true,
    source: practice,
  }));

const fumesBeside = (piece: Piece, moment: Moment): readonly Caution[] =>
  beside(
    piece,
    moment,
    ({ fumes, stepClass }) => fumes === true || stepClass === 'coat, sprayed',
  ).map(({ piece: other, step }) => ({
    id: 'fumes in the air',
    says: `${other.number ?? ''} ${other.name} gives off fumes now (${step.name}): mask here too, no spark, no laptop, heater or fan near`,
    deadly: false,
    ofTheMoment: true,
    source: practice,
  }));

/** `2, 4 and 6`. */
const listed = (words: readonly string[]): string =>
  words.length < 2
    ? (words[0] ?? '')
    : `${words.slice(0, -1).join(', ')} and ${words.at(-1) ?? ''}`;
