import {
  airWarnings,
  isDone,
  sessionHolding,
  type Intent,
  type Piece,
  type PlannedStep,
} from '../../tracker/bench/index.ts';
import { airWarningWords } from '../../views/format/index.ts';
import type { Look } from './look.ts';

/** Intents with which a coat can begin. */
const begins: ReadonlySet<Intent['do']> = new Set([
  'pick up',
  'take along',
  'next stamp',
  'first stroke',
  'next section',
]);

/** What the air says against the coats that are in hand with a piece now, after it was picked up or a stroke put on. */
export function airTold(intents: readonly Intent[], shop: Look, id: string): readonly string[] {
  if (!intents.some((intent) => begins.has(intent.do))) return [];
  const told = (sessionHolding(shop.bench, id)?.targets ?? []).flatMap((target) => {
    const piece = shop.bench.pieces.get(target.piece);
    const step = piece?.steps.find((each) => each.id === target.step);
    return piece === undefined || step === undefined ? [] : airAgainst(piece, step, shop);
  });
  return [...new Set(told)].map(airLine);
}

/** What the air says against putting the coat of a step on now, a sentence each; nothing once it is done. */
export const airAgainst = (
  piece: Piece,
  step: PlannedStep,
  { readings, now, shop }: Look,
): readonly string[] =>
  isDone(piece, step.id, null)
    ? []
    : airWarnings(piece, step, readings, now).map((warning) => airWarningWords(warning, now, shop));

export const airLine = (warning: string): string => `air: ${warning}`;
