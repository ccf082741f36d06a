import { airWarnings, sessionHolding, type Intent } from '../../tracker/bench/index.ts';
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
export function airTold(
  intents: readonly Intent[],
  { bench, readings, now, shop }: Look,
  id: string,
): readonly string[] {
  if (!intents.some((intent) => begins.has(intent.do))) return [];
  const told = (sessionHolding(bench, id)?.targets ?? []).flatMap((target) => {
    const piece = bench.pieces.get(target.piece);
    const step = piece?.steps.find((each) => each.id === target.step);
    if (piece === undefined || step === undefined) return [];
    return airWarnings(piece, step, readings, now).map(
      (warning) => `air: ${airWarningWords(warning, now, shop)}`,
    );
  });
  return [...new Set(told)];
}
