import { piecesOnBench, type Bench, type Piece, type Session } from '../../tracker/bench/index.ts';
import { leftRunning } from '../../tracker/estimate/index.ts';
import type { MinutesIntent } from '../../tracker/learning/index.ts';
import type { Instant } from '../../tracker/time/index.ts';
import { clock, type ShopClock } from '../format/index.ts';
import { calledPiece } from '../parts/called-piece.ts';
import type { Correcting } from '../screens.ts';
import { movedTargets } from './moved-targets.ts';
import {
  correctable,
  firstWords,
  sessionDay,
  sessionLength,
  sessionSpan,
  sessionWork,
} from './session-words.ts';
import { whatIfWords } from './what-if-words.ts';

/** One line of a list that is picked from by its number or by Enter. */
export type Choice = { readonly value: string; readonly label: string; readonly more?: string };

export type Changes = 'end' | 'trim' | 'start' | 'work' | 'drop' | 'keep' | 'leave' | 'teach';

/** What may be picked at this point of a correction; none while a time is being written. */
export function choicesOf(
  { asks, session: id, piece: other, at }: Correcting,
  bench: Bench,
  piece: Piece,
  now: Instant,
  shop: ShopClock,
): readonly Choice[] {
  const session = bench.sessions.find((each) => each.id === id);
  switch (asks) {
    case 'session':
      return correctable(bench, piece.id).map((each) => ({
        value: each.id,
        label: `${sessionDay(each, shop)}, ${sessionSpan(each, shop)}, ${sessionLength(each, now)}`,
        more: [sessionWork(each, piece), firstWords(each, shop)].filter(Boolean).join('; '),
      }));
    case 'change':
      return session === undefined ? [] : changesOf(bench, piece, session, now, shop);
    case 'piece':
      return piecesToMoveTo(bench, piece).map((each) => ({
        value: each.id,
        label: each.id === piece.id ? `${calledPiece(each)}, another step` : calledPiece(each),
      }));
    case 'step': {
      const steps = bench.pieces.get(other ?? '')?.steps ?? [];
      const choices: readonly Choice[] = [
        ...steps.map(({ id: value, name }) => ({ value, label: name })),
        { value: '', label: 'other work, no step' },
      ];
      // Only of the marked one: each means learning anew.
      return choices.map((choice, index) => {
        if (index !== at || session === undefined) return choice;
        const targets = movedTargets(session, {
          from: piece.id,
          to: other ?? piece.id,
          step: choice.value || null,
        });
        return withEffect(choice, bench, { do: 'correct session', session: session.id, targets });
      });
    }
    case 'start':
    case 'end':
      return [];
  }
}

function changesOf(
  bench: Bench,
  piece: Piece,
  session: Session,
  now: Instant,
  shop: ShopClock,
): readonly Choice[] {
  const change = (value: Changes, label: string): Choice => ({ value, label });
  const corrected = (value: Changes, label: string, how: Partial<SessionChanges>): Choice =>
    withEffect(change(value, label), bench, {
      do: 'correct session',
      session: session.id,
      ...how,
    });
  if (session.dropped) return [corrected('keep', 'it was: count it again', { dropped: false })];
  const trimTo = leftRunning(bench, piece, session, now)?.trimTo ?? null;
  const leave = session.keptFromLearning !== true;
  return [
    change('end', 'it ended at another time'),
    change('start', 'it began at another time'),
    change('work', 'it was another step or piece'),
    corrected('drop', 'it never was: drop it', { dropped: true }),
    ...(trimTo === null
      ? []
      : [corrected('trim', `left running: trim it to ${clock(trimTo, shop)}`, { end: trimTo })]),
    withEffect(
      change(leave ? 'leave' : 'teach', leave ? 'leave it out of learning' : 'let it teach again'),
      bench,
      { do: 'leave out of learning', piece: piece.id, session: session.id, leave },
    ),
  ];
}

type SessionChanges = Omit<Extract<MinutesIntent, { do: 'correct session' }>, 'do' | 'session'>;

/** With what it would do to expected minutes, where that can be told. */
function withEffect(choice: Choice, bench: Bench, intent: MinutesIntent): Choice {
  const more = whatIfWords(bench, intent);
  return more === null ? choice : { ...choice, more };
}

/** The piece itself first, for another of its steps; then those on the bench, then those that have left it. */
const piecesToMoveTo = (bench: Bench, piece: Piece): readonly Piece[] => [
  piece,
  ...piecesOnBench(bench).filter(({ id }) => id !== piece.id),
  ...[...bench.pieces.values()].filter(({ id, place }) => place === 'past' && id !== piece.id),
];

/** The step that a piece had come to at an instant: the first that was not finished before. */
export function stepAt(piece: Piece, at: Instant): string {
  const step = piece.steps.find(
    ({ id, skipped }) =>
      !skipped && !piece.finishes.some((finish) => finish.step === id && finish.at <= at),
  );
  return step?.id ?? '';
}
