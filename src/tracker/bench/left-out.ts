import { whyNotFor, type Failing, type KnownOfPiece } from '../trade/condition.ts';
import { countedBy, countWords, lacking } from '../trade/counts.ts';
import type { Piece, PlannedStep } from './piece.ts';

/** The id by which other steps name a step: a repeated one goes by its original's. */
export const originalOf = ({ id, copyOf }: PlannedStep): string => copyOf ?? id;

/** What a step's condition is held against. */
export function knownOf(piece: Piece): KnownOfPiece {
  const { yearMade, wood, answers } = piece;
  const given = Object.entries(answers).map(([step, { answer }]) => [step, answer] as const);
  return { yearMade, wood, answers: Object.fromEntries(given), lacks: lacking(piece) };
}

/** Steps that the piece itself decides on. */
const hasRule = (step: PlannedStep): boolean =>
  step.onlyIf !== undefined || countedBy(step) !== null;

/** What was worked on is not left out any more, whatever is told of the piece later. */
const hasRecord = ({ stamps, finishes }: Piece, { id }: PlannedStep): boolean =>
  stamps.some(({ step }) => step === id) || finishes.some(({ step }) => step === id);

const isLeftOut = (piece: Piece, step: PlannedStep): boolean =>
  hasRule(step) && whyNotFor(step, knownOf(piece)) !== null && !hasRecord(piece, step);

/** A step as somebody said: a word that only repeats its rule is none, so that the rule goes on counting. */
export function toldToSkip(piece: Piece, step: PlannedStep, isSkipped: boolean): PlannedStep {
  const { told: _, ...plain } = step;
  const isByRule = isLeftOut(piece, step);
  return { ...plain, skipped: isSkipped, ...(isSkipped === isByRule ? {} : { told: isSkipped }) };
}

/** The piece with its steps left out by their rules, or back in the list; nothing of that is stored. */
export function withRules(piece: Piece): Piece {
  if (!piece.steps.some(hasRule)) return piece;
  return { ...piece, steps: piece.steps.map((step) => withRule(piece, step)) };
}

function withRule(piece: Piece, step: PlannedStep): PlannedStep {
  if (!hasRule(step)) return step;
  const isByRule = isLeftOut(piece, step);
  const isSkipped = step.told ?? isByRule;
  const { leftOut: _, ...plain } = step;
  return {
    ...plain,
    skipped: isSkipped,
    ...(isSkipped && isByRule ? { leftOut: true as const } : {}),
  };
}

/** Why a step is left out by its rule; null where it isn't. */
const whyLeftOut = (piece: Piece, step: PlannedStep): Failing | null =>
  step.leftOut === true ? whyNotFor(step, knownOf(piece)) : null;

/** `hardwood`, `made 1985`: the same in a few words, empty where it isn't left out. */
export function leftOutWords(piece: Piece, step: PlannedStep): string {
  const why = whyLeftOut(piece, step);
  return why === null ? '' : whyInWords(piece, why);
}

function whyInWords(piece: Piece, why: Failing): string {
  switch (why.term) {
    case 'year':
      return piece.yearMade === null ? 'year not known' : `made ${piece.yearMade}`;
    case 'wood':
      return piece.wood === null ? 'wood not known' : `${piece.wood}wood`;
    case 'none':
      return countWords(why.of, 0);
    case 'answer': {
      const asking = piece.steps.find(({ id }) => id === why.step);
      // A long name is cut at its end in a list: what it is about comes first.
      if (why.answer === null) return `no answer yet: ${asking?.name ?? why.step}`;
      return asking?.asks?.answers.find(({ id }) => id === why.answer)?.says ?? why.answer;
    }
  }
}
