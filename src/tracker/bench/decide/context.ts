import { nearest } from '../../trade/nearest.ts';
import type { Instant } from '../../time/index.ts';
import type { NewBenchFact } from '../facts.ts';
import type { Intent, IntentContext } from '../intents.ts';
import { refuse, type Outcome } from '../outcome.ts';
import type { Bench } from '../bench.ts';
import type { Piece, PlannedStep } from '../piece.ts';
import { piecesOnBench } from '../standing.ts';

/** The instant an intent is about. */
export const instantOf = (context: IntentContext): Instant => context.at ?? context.now;

/** A fact at the instant the intent is about. */
export const factAt = (context: IntentContext, fact: NewBenchFact): NewBenchFact =>
  context.at === undefined ? fact : { ...fact, at: context.at };

/** `4 Side table`, or the name alone once it has left the bench. */
export const called = (piece: Piece): string =>
  piece.number === null ? piece.name : `${piece.number} ${piece.name}`;

/** `4 Side table, left door`: a part is named with its piece; the whole piece alone. */
export const calledPart = (piece: Piece, part: string | null): string =>
  [called(piece), ...piece.parts.filter(({ id }) => id === part).map(({ name }) => name)].join(
    ', ',
  );

/** Finds a piece, wherever it is, or refuses. `not` is the beginning of the refusal: `Not picked up`. */
export function anywhere(bench: Bench, id: string, not: string): Piece | Outcome {
  const piece = bench.pieces.get(id);
  if (piece !== undefined) return piece;
  const others = [...bench.pieces.values()].filter((each) => each.place === 'past');
  return refuse(
    `${not}: there is no piece "${id}".`,
    nearest(
      id,
      [...piecesOnBench(bench), ...others].map((each) => each.name),
    ),
  );
}

/** Finds a piece on the bench, and sees that it has the part where one is named; else refuses. */
export function onBench(
  bench: Bench,
  id: string,
  not: string,
  part: string | null = null,
): Piece | Outcome {
  const piece = anywhere(bench, id, not);
  if (isOutcome(piece)) return piece;
  if (piece.place !== 'bench')
    return refuse(`${not}: ${piece.name} is not on the bench. Put it back first.`);
  return wrongPart(piece, part, not) ?? piece;
}

/** Refuses a part that the piece doesn't have. */
export function wrongPart(piece: Piece, part: string | null, not: string): Outcome | null {
  if (part === null || piece.parts.some((each) => each.id === part)) return null;
  return refuse(
    `${not}: ${called(piece)} has no part "${part}".`,
    nearest(
      part,
      piece.parts.map((each) => each.name),
    ),
  );
}

/** Finds a step of a piece, or refuses and offers the nearest names. */
export function stepOf(piece: Piece, id: string, not: string): PlannedStep | Outcome {
  const step = piece.steps.find((each) => each.id === id);
  if (step !== undefined) return step;
  return refuse(
    `${not}: ${called(piece)} has no step "${id}".`,
    nearest(
      id,
      piece.steps.map((each) => each.name),
    ),
  );
}

/** Tells a refusal from what was looked for: nothing that is looked for has a field `ok`. */
export const isOutcome = (value: object): value is Outcome => 'ok' in value;

/** How the refusal of each intent begins. Taking back and noting a clock step have no instant of their own. */
const beginnings: Readonly<Record<Intent['do'], string | null>> = {
  'add piece': 'Not added',
  'describe piece': 'Not noted',
  'name parts': 'Not noted',
  'insert step': 'Not inserted',
  'repeat step': 'Not repeated',
  'move step': 'Not moved',
  'skip step': 'Not skipped',
  'reword step': 'Not reworded',
  answer: 'Not answered',
  'use product': 'Not changed',
  'place hold': 'Not on hold',
  'lift hold': 'Not lifted',
  'carry in': 'Not noted',
  'take off bench': 'Not taken off',
  'put back on bench': 'Not put back',
  'remove piece': 'Not removed',
  'write note': 'Not noted',
  'pick up': 'Not picked up',
  'take along': 'Not taken along',
  'put down': 'Not put down',
  'next stamp': 'Not stamped',
  'first stroke': 'Not stamped',
  'next section': 'Not stamped',
  done: 'Not done',
  stamp: 'Not stamped',
  check: 'Not noted',
  'match pieces': 'Not matched',
  'tell coat weight': 'Not noted',
  'explain lateness': 'Not noted',
  'read moisture': 'Not noted',
  'move stamp': 'Not moved',
  'start timer': 'Not started',
  'close timer': 'Not closed',
  'mix pot': 'Not mixed',
  'wash out pot': 'Not washed out',
  'move pot': 'Not moved',
  'correct session': 'Not corrected',
  'leave out of learning': 'Not left out',
  'import hours': 'Not taken',
  'take out import': 'Not taken out',
  'take back': null,
  'bring back': null,
  'shut up shop': 'Not noted',
  'deal with rags': 'Not noted',
  'note clock step': null,
};

/** Refuses whatever is said to have happened after now. */
export function fromTheFuture(intent: Intent, context: IntentContext): Outcome | null {
  const not = beginnings[intent.do];
  if (not === null || instantOf(context) <= context.now) return null;
  return refuse(`${not}: that time is still to come. Give one that has passed.`);
}
