import type { Piece, PlannedStep } from '../bench/piece.ts';
import type { TradeRules } from '../trade/caution-rules.ts';

/**
 * What hangs on a step, its piece and the rules alone, worked out once: a screen asks in every frame, and for pieces beside
 * the one it shows. Folding keeps a piece's object just as long as no fact touches it or its sessions.
 *
 * @param workOut may use of `rest` only what stays the same with these
 */
export function onceAStep<T, Rest extends readonly unknown[]>(
  workOut: (piece: Piece, step: PlannedStep, rules: TradeRules, ...rest: Rest) => T,
): typeof workOut {
  const known = new WeakMap<Piece, WeakMap<PlannedStep, { rules: TradeRules; value: T }>>();
  return (piece, step, rules, ...rest) => {
    let steps = known.get(piece);
    if (steps === undefined) known.set(piece, (steps = new WeakMap()));
    const before = steps.get(step);
    if (before?.rules === rules) return before.value;
    const value = workOut(piece, step, rules, ...rest);
    steps.set(step, { rules, value });
    return value;
  };
}
