import { isDone } from '../bench/progress.ts';
import type { Bench, ImportedHours, Session } from '../bench/bench.ts';
import type { Piece } from '../bench/piece.ts';
import { expectedMinutes } from '../estimate/expected.ts';
import { sessionsByPiece, workedOnStep } from '../estimate/worked-time.ts';
import type { Instant } from '../time/index.ts';
import type { LearnedMinutes, TaughtStep } from './learned-minutes.ts';
import { nothingLearned, teach, teachGuesses } from './teach.ts';

/** A step that teaches, and when it was finished. */
export type Lesson = TaughtStep & { readonly piece: string; readonly at: Instant };

/** What was learned, and up to which finish of each piece. */
export type Taught = {
  readonly minutes: LearnedMinutes;
  readonly until: Readonly<Record<string, Instant>>;
};

export const notTaught: Taught = { minutes: nothingLearned(), until: {} };

/**
 * Adds what the finished steps of a bench teach, in the order in which they were finished; those that were taught before
 * don't count again. Pieces that were removed or left out of learning teach nothing, nor do steps that were worked in a
 * session that was left out or that is still running.
 */
export function teachBench(before: Taught, bench: Bench, except: readonly string[] = []): Taught {
  const lessons = lessonsOf(bench).filter(({ piece, at }) => {
    const until = before.until[piece];
    return !except.includes(piece) && (until === undefined || at > until);
  });
  if (lessons.length === 0) return before;
  const last = lastTaught.get(before);
  if (
    last?.lessons.length === lessons.length &&
    last.lessons.every((each, i) => each === lessons[i])
  )
    return last.taught;
  const taught = {
    minutes: teach(before.minutes, lessons),
    until: { ...before.until, ...Object.fromEntries(lessons.map(({ piece, at }) => [piece, at])) },
  };
  lastTaught.set(before, { lessons, taught });
  return taught;
}

/** Adds what hours that were kept elsewhere teach, in the order of their days. Their estimates are this person's own guesses. */
export function teachImports(before: Taught, imports: readonly ImportedHours[]): Taught {
  if (imports.length === 0) return before;
  const known = lastImports.get(before);
  if (known !== undefined && known.imports.map(idOf).join() === imports.map(idOf).join())
    return known.taught;
  const lessons = imports
    .flatMap(({ rows }) => rows)
    .toSorted((a, b) => a.at - b.at)
    .map(({ stepClass, estimate, minutes }) => ({ stepClass, scheduled: estimate, minutes }));
  const taught = { ...before, minutes: teachGuesses(before.minutes, lessons) };
  lastImports.set(before, { imports, taught });
  return taught;
}

const idOf = ({ id }: ImportedHours): string => id;

/** An import never changes: what it taught holds as long as the same ones are in. */
const lastImports = new WeakMap<
  Taught,
  { readonly imports: readonly ImportedHours[]; readonly taught: Taught }
>();

/** Most key presses finish nothing: what was worked out from the same lessons holds. */
const lastTaught = new WeakMap<
  Taught,
  { readonly lessons: readonly Lesson[]; readonly taught: Taught }
>();

/** Which of these pieces are on this bench and were removed or left out of learning. */
export const notToTeach = (bench: Bench, pieces: readonly string[]): readonly string[] =>
  [...new Set(pieces)]
    .filter((id) => {
      const piece = bench.pieces.get(id);
      return piece !== undefined && !mayTeach(piece);
    })
    .sort();

/** Whether anything of a piece teaches: it was neither removed nor left out. */
export const mayTeach = ({ place, keptFromLearning }: Piece): boolean =>
  place !== 'removed' && keptFromLearning !== true;

/** What the finished steps of a bench teach, in the order in which they were finished. */
export function lessonsOf(bench: Bench): readonly Lesson[] {
  const sessions = sessionsByPiece(bench);
  return [...bench.pieces.values()]
    .filter(mayTeach)
    .flatMap((piece) => lessonsOfPiece(bench, piece, sessions))
    .sort((a, b) => a.at - b.at);
}

type Kept = { readonly sessions: readonly Session[]; readonly lessons: readonly Lesson[] };

/** A piece that no fact touched keeps its object, and its sessions theirs: nothing is worked out twice for it. */
const keptLessons = new WeakMap<Piece, Kept>();

function lessonsOfPiece(
  bench: Bench,
  piece: Piece,
  sessions: ReadonlyMap<string, readonly Session[]>,
): readonly Lesson[] {
  const own = sessions.get(piece.id) ?? [];
  const kept = keptLessons.get(piece);
  if (kept !== undefined && isSame(kept.sessions, own)) return kept.lessons;
  const lessons = piece.steps.flatMap((step): Lesson[] => {
    const ends = piece.finishes.filter((finish) => finish.step === step.id).map(({ at }) => at);
    if (ends.length === 0 || !isDone(piece, step.id, null)) return [];
    const worked = own.filter(({ targets }) =>
      targets.some((target) => target.piece === piece.id && target.step === step.id),
    );
    if (worked.some(({ end, keptFromLearning }) => end === null || keptFromLearning === true))
      return [];
    const at = Math.max(...ends);
    const { recorded, setup } = workedOnStep(bench, piece, step.id, sessions, at);
    const minutes = recorded - setup;
    const scheduled = expectedMinutes(step, piece).minutes;
    if (!(minutes >= leastMinutes) || !(scheduled > 0)) return [];
    return [{ piece: piece.id, at, stepClass: step.stepClass, scheduled, minutes }];
  });
  keptLessons.set(piece, { sessions: own, lessons });
  return lessons;
}

/** Two presses within a minute tell of work that was done before them: they measure nothing. */
const leastMinutes = 1;

const alike = (a: Session, b: Session | undefined): boolean =>
  b !== undefined &&
  a.id === b.id &&
  a.start === b.start &&
  a.end === b.end &&
  a.dropped === b.dropped &&
  a.keptFromLearning === b.keptFromLearning &&
  JSON.stringify(a.targets) === JSON.stringify(b.targets);

const isSame = (one: readonly Session[], other: readonly Session[]): boolean =>
  one.length === other.length && one.every((session, i) => alike(session, other[i]));
