import { stampsFor } from '../trade/agents.ts';
import { barePiece } from './bare-piece.ts';
import { touch, type BenchInMaking } from './bench-in-making.ts';
import type { BenchFact, PieceDescription } from './facts.ts';
import type { Piece, PlannedStep } from './piece.ts';
import { originalOf, toldToSkip } from './left-out.ts';

/** Folds in what is told about pieces, their parts, steps, notes and holds. */
export function foldPieceFact(bench: BenchInMaking, fact: BenchFact): void {
  switch (fact.kind) {
    case 'piece-added':
      bench.pieces.set(fact.body.piece, newPiece(fact));
      touch(bench, fact.body.piece);
      return;
    case 'piece-described':
      return change(bench, fact.body.piece, (piece) => ({ ...piece, ...told(fact.body.changes) }));
    case 'parts-named':
      return change(bench, fact.body.piece, (piece) => ({ ...piece, parts: fact.body.parts }));
    case 'step-inserted':
      return change(bench, fact.body.piece, (piece) => ({
        ...piece,
        steps: placeBefore(
          piece.steps,
          { ...fact.body.step, skipped: false, copyOf: fact.body.copyOf ?? null },
          fact.body.before,
        ),
      }));
    case 'step-moved':
      return change(bench, fact.body.piece, (piece) => {
        const step = piece.steps.find((each) => each.id === fact.body.step);
        if (step === undefined) return piece;
        const others = piece.steps.filter((each) => each !== step);
        return { ...piece, steps: placeBefore(others, step, fact.body.before) };
      });
    case 'step-skipped':
      return change(bench, fact.body.piece, (piece) => ({
        ...piece,
        steps: piece.steps.map((step) =>
          step.id === fact.body.step ? toldToSkip(piece, step, fact.body.skipped) : step,
        ),
      }));
    case 'step-reworded':
      return changeStep(bench, fact.body, (step) => ({ ...step, name: fact.body.name }));
    case 'question-answered':
      return change(bench, fact.body.piece, (piece) => answered(piece, fact));
    case 'trial-waived':
      return change(bench, fact.body.piece, (piece) => ({
        ...piece,
        waivers: [
          ...piece.waivers,
          { step: fact.body.step, reason: fact.body.reason, at: fact.at },
        ],
      }));
    case 'product-chosen': {
      const { piece: id, step, key, product } = fact.body;
      return change(bench, id, (piece) => ({
        ...piece,
        products: { ...piece.products, [key]: product },
        steps: piece.steps.map((each) =>
          each.id === step
            ? { ...each, product: key, stamps: stampsFor(each.stamps, product) }
            : each,
        ),
      }));
    }
    case 'hold-placed':
      return change(bench, fact.body.piece, (piece) => ({
        ...piece,
        hold: {
          fact: fact.id,
          reason: fact.body.reason,
          since: fact.at,
          askAgain: fact.body.askAgain,
        },
      }));
    case 'hold-lifted':
      return change(bench, fact.body.piece, (piece) => ({ ...piece, hold: null }));
    case 'carried-in':
      return change(bench, fact.body.piece, (piece) => ({ ...piece, carriedInAt: fact.at }));
    case 'piece-left-bench':
      return change(bench, fact.body.piece, (piece) => ({
        ...piece,
        place: 'past',
        number: null,
        leftAt: fact.at,
      }));
    case 'piece-put-back':
      return change(bench, fact.body.piece, (piece) => ({
        ...piece,
        place: 'bench',
        number: fact.body.number,
        leftAt: null,
      }));
    case 'piece-removed':
      return change(bench, fact.body.piece, (piece) => ({
        ...piece,
        place: 'removed',
        number: null,
        leftAt: fact.at,
      }));
    case 'match-told': {
      const { partner, name, matches } = fact.body;
      return change(bench, fact.body.piece, (piece) => ({
        ...piece,
        partners: [
          ...piece.partners.filter((each) => each.piece !== partner),
          ...(matches ? [{ piece: partner, name }] : []),
        ],
      }));
    }
    case 'kept-from-learning':
      if (fact.body.session !== null) return;
      return change(bench, fact.body.piece, (piece) => keptFromLearning(piece, fact.body.kept));
    case 'note-written':
      return change(bench, fact.body.piece, (piece) => ({
        ...piece,
        notes: [
          ...piece.notes,
          { fact: fact.id, step: fact.body.step, text: fact.body.text, at: fact.at },
        ],
      }));
    default:
    // Facts about work are folded elsewhere.
  }
}

/** Marks a piece or a session, or takes the mark off again. */
export function keptFromLearning<Thing extends { readonly keptFromLearning?: true }>(
  { keptFromLearning: _, ...thing }: Thing,
  isKept: boolean,
): Omit<Thing, 'keptFromLearning'> & { readonly keptFromLearning?: true } {
  return isKept ? { ...thing, keptFromLearning: true } : thing;
}

function newPiece(fact: Extract<BenchFact, { kind: 'piece-added' }>): Piece {
  const { piece, number, name, schedule, steps, products } = fact.body;
  return {
    id: piece,
    number,
    name,
    schedule,
    products,
    ...barePiece,
    steps: steps.map((step) => ({ ...step, skipped: false, copyOf: null })),
    place: 'bench',
    addedAt: fact.at,
    leftAt: null,
  };
}

function answered(
  piece: Piece,
  { id, at, body }: Extract<BenchFact, { kind: 'question-answered' }>,
): Piece {
  const step = piece.steps.find((each) => each.id === body.step);
  if (step === undefined) return piece;
  const { [originalOf(step)]: _, ...others } = piece.answers;
  if (body.answer === null) return { ...piece, answers: others };
  return {
    ...piece,
    answers: { ...others, [originalOf(step)]: { answer: body.answer, at, fact: id } },
  };
}

/** Changes a piece, and notes that a fact touched it; nothing where there is no such piece. */
export function change(bench: BenchInMaking, id: string, how: (piece: Piece) => Piece): void {
  const piece = bench.pieces.get(id);
  if (piece === undefined) return;
  bench.pieces.set(id, how(piece));
  touch(bench, id);
}

const changeStep = (
  bench: BenchInMaking,
  { piece, step }: { readonly piece: string; readonly step: string },
  how: (step: PlannedStep) => PlannedStep,
): void =>
  change(bench, piece, (each) => ({
    ...each,
    steps: each.steps.map((one) => (one.id === step ? how(one) : one)),
  }));

/** Only the fields that were told; undefined ones leave the piece as it is. */
const told = (changes: PieceDescription): Partial<Piece> =>
  Object.fromEntries(Object.entries(changes).filter(([, value]) => value !== undefined));

function placeBefore(
  steps: readonly PlannedStep[],
  step: PlannedStep,
  before: string | null,
): readonly PlannedStep[] {
  const index = before === null ? -1 : steps.findIndex((each) => each.id === before);
  return index < 0 ? [...steps, step] : [...steps.slice(0, index), step, ...steps.slice(index)];
}
