import {
  inHand,
  isDone,
  piecesOnBench,
  type Bench,
  type Piece,
  type PlannedStep,
  type Session,
  type Target,
} from '../../tracker/bench/index.ts';
import { foreseenOn, handsOnMinutes, rangeOfSum } from '../../tracker/estimate/index.ts';
import { minute } from '../../tracker/time/index.ts';
import { cut, segment, width, type Line } from '../drawing/index.ts';
import { minutesSpent, rangeInWords } from '../format/index.ts';
import type { View } from '../screen.ts';

/** Row 4: what is in hand, how long already, and on a wide screen how long it is expected to take. */
export function inHandLine(view: View, cells: number): Line {
  const { bench } = view.snapshot;
  const held = inHand(bench);
  const label = view.columns < 80 ? 'in hand ' : 'in hand  ';
  if (held.length === 0) {
    const anything = piecesOnBench(bench).length > 0;
    return [segment(label, 'quiet'), segment(anything ? 'nothing' : '', 'quiet')];
  }
  const room = cells - label.length;
  const all = held.map((session) => sessionWords(session, bench, view));
  const full = all.map(({ names, minutes, about }) => names + minutes + about).join('   ');
  if (width(full) <= room) return [segment(label, 'quiet'), segment(full, 'strong')];
  // The minutes are what changes: the names of the steps are cut for them.
  const each = Math.floor((room - 3 * (all.length - 1)) / all.length);
  const told = all.map(
    ({ names, minutes }) => cut(names, each - width(minutes), view.theme.glyphs) + minutes,
  );
  return [segment(label, 'quiet'), segment(told.join('   '), 'strong')];
}

type Work = { readonly target: Target; readonly piece: Piece; readonly step: PlannedStep | null };

type Told = { readonly names: string; readonly minutes: string; readonly about: string };

function sessionWords(session: Session, bench: Bench, view: View): Told {
  const works = session.targets.flatMap((target): Work[] => {
    const piece = bench.pieces.get(target.piece);
    const step = piece?.steps.find((each) => each.id === target.step) ?? null;
    return piece === undefined ? [] : [{ target, piece, step }];
  });
  const minutes = minutesSpent(view.now - session.start);
  if (view.columns < 80) {
    const [only] = works;
    const names =
      works.length === 1 && only !== undefined
        ? nameOf(only, false)
        : works.map(({ piece }) => piece.number).join(', ');
    return { names, minutes: `, ${minutes}`, about: '' };
  }
  const expected = rangeOfSum(
    works.flatMap(({ piece, step }) => (step === null ? [] : [foreseenOn(bench, step, piece)])),
  );
  const before = works.reduce(
    (sum, { piece, step }) =>
      sum + (step === null ? 0 : handsOnMinutes(bench, piece, step.id, view.now, session)),
    0,
  );
  // What took longer already than it was expected to, nobody knows how long it goes on.
  if (expected === null || before >= expected.minutes)
    return { names: namesByStep(works), minutes: `, ${minutes}`, about: '' };
  // The clock has run since the pick-up, so setup and cleanup are in what it comes to, once; earlier sessions are not.
  const setup = Math.max(0, ...works.map(({ step }) => step?.setupMinutes ?? 0));
  const comesTo = (end: number): number => Math.max(0, end - before) + setup;
  const about = ` of about ${minutesSpent(comesTo(expected.minutes) * minute)}`;
  const range =
    view.columns < 120
      ? ''
      : `; ${setup > 0 ? 'with setup' : 'expected'} ${rangeInWords(comesTo(expected.low), comesTo(expected.high))}, 4 times in 5`;
  return { names: namesByStep(works), minutes: `, ${minutes}`, about: about + range };
}

/** `2 Oak chest: clear coat 2`; of several at a like step `2 Oak chest done, 5 Beech stool: clear coat 2`. */
function namesByStep(works: readonly Work[]): string {
  const byStep = Map.groupBy(works, ({ step }) => step?.name ?? 'other work');
  return [...byStep]
    .map(
      ([step, own]) => `${own.map((work) => nameOf(work, works.length > 1)).join(', ')}: ${step}`,
    )
    .join(' and ');
}

function nameOf({ piece, step, target }: Work, isShared: boolean): string {
  const part = piece.parts.find(({ id }) => id === target.part);
  const done = isShared && step !== null && isDone(piece, step.id, target.part) ? ' done' : '';
  // Of several the commas are between the pieces.
  const name = [piece.name, ...(part === undefined ? [] : [part.name])].join(isShared ? ' ' : ', ');
  return `${piece.number} ${name}${done}`;
}
