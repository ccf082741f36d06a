import type { Intent, Piece, Session, Target } from '../tracker/bench/index.ts';
import { leftRunning } from '../tracker/estimate/index.ts';
import type { Instant } from '../tracker/time/index.ts';
import { movedTargets } from '../views/hours/moved-targets.ts';
import { readMoment } from '../views/hours/read-moment.ts';
import { correctable } from '../views/hours/session-words.ts';
import { failure, isFailure, type CommandFile, type Failure, type Given } from './line/command.ts';
import type { Look } from './line/look.ts';
import { record } from './line/record.ts';
import { answerWhatIf, whatIfOption } from './line/what-if.ts';
import { findOnBench, findPart, pieceCalled } from './names/find-piece.ts';
import { findStep } from './names/find-step.ts';

const not = 'Not corrected';

export const correctSession: CommandFile = {
  takes: '<piece> <number>',
  options: [
    ['--start <time>', 'when it began: 12:00, or -15 and +10 for minutes earlier and later'],
    ['--end <time>', 'when it ended'],
    ['--trim', 'end it where it seems to have been left running'],
    ['--to <piece>', 'the piece that was really in hand'],
    ['--part <name>', 'the part that was worked'],
    ['--step <name>', 'the step that was worked'],
    ['--other', 'it was work that belongs to no step'],
    ['--drop', 'it never was'],
    ['--undrop', 'it was after all'],
    whatIfOption,
  ],
  help: 'The number is the one that "sessions PIECE" shows. What was first recorded stays on record.',
  run: (room, given) =>
    given.has('what-if')
      ? answerWhatIf(room, (look) => correction(given, look))
      : record(room, (look) => {
          const intent = correction(given, look);
          return isFailure(intent) ? intent : { intents: [intent] };
        }),
};

type Correction = Extract<Intent, { do: 'correct session' }>;

function correction(given: Given, look: Look): Correction | Failure {
  const { bench, now } = look;
  const piece = findOnBench(given.word('piece'), bench, not);
  if (isFailure(piece)) return piece;
  const number = given.word('number');
  const all = correctable(bench, piece.id);
  const session = all.find(({ id }, index) => String(index + 1) === number || id === number);
  if (session === undefined)
    return failure(
      'unknown',
      `${not}: ${pieceCalled(piece)} has no session "${number}"; it has ${all.length}.`,
    );
  if (given.has('drop') && given.has('undrop'))
    return failure('usage', `${not}: give --drop or --undrop, not both.`);
  if (given.has('trim') && given.maybe('end') !== null)
    return failure('usage', `${not}: give --trim or --end, not both.`);
  const start = moment('start', given, session, look);
  if (isFailure(start)) return start;
  const end = given.has('trim')
    ? trimmed(leftRunning(bench, piece, session, now)?.trimTo ?? null)
    : moment('end', given, session, look);
  if (isFailure(end)) return end;
  const targets = otherTargets(given, session, piece, look);
  if (isFailure(targets)) return targets;
  const dropped = given.has('drop') || given.has('undrop') ? { dropped: given.has('drop') } : {};
  const changes = { ...start, ...end, ...targets, ...dropped };
  if (Object.keys(changes).length === 0)
    return failure('usage', `${not}: say what was wrong: --start, --end, --to, --step, --drop.`);
  return { do: 'correct session', session: session.id, ...changes };
}

const trimmed = (at: Instant | null): { readonly end: Instant } | Failure =>
  at === null
    ? failure('refused', `${not}: nothing tells where it could be trimmed to. Give --end.`)
    : { end: at };

function moment(
  which: 'start' | 'end',
  given: Given,
  session: Session,
  { now, shop }: Look,
): Partial<Readonly<Record<'start' | 'end', Instant>>> | Failure {
  const typed = given.maybe(which);
  if (typed === null) return {};
  const read = readMoment(typed, { which, start: session.start, end: session.end }, now, shop);
  return read.ok ? { [which]: read.at } : failure('usage', `${not}: ${read.says}`);
}

/** What was really worked, where that was another piece, part or step. */
function otherTargets(
  given: Given,
  session: Session,
  recorded: Piece,
  { bench }: Look,
): { readonly targets?: readonly Target[] } | Failure {
  const [typedPiece, typedPart, typedStep] = [
    given.maybe('to'),
    given.maybe('part'),
    given.maybe('step'),
  ];
  if (typedPiece === null && typedPart === null && typedStep === null && !given.has('other'))
    return {};
  if (typedStep !== null && given.has('other'))
    return failure('usage', `${not}: give --step or --other, not both.`);
  const to = typedPiece === null ? recorded : findOnBench(typedPiece, bench, not);
  if (isFailure(to)) return to;
  const part = findPart(typedPart, to, not);
  if (isFailure(part)) return part;
  const step = typedStep === null ? null : findStep(typedStep, to, not);
  if (isFailure(step)) return step;
  return {
    targets: movedTargets(session, {
      from: recorded.id,
      to: to.id,
      part: part?.id,
      step: given.has('other') ? null : step?.id,
    }),
  };
}
