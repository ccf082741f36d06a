import type { Edge, Stretch, WindowRule } from './model.ts';

/**
 * The windows to go by while nobody has said whether the wood is soft or hard: what opens, opens when both would let
 * it; what closes, closes when either would. A rule that only one wood has counts as it is.
 */
export function forEitherWood(
  soft: readonly WindowRule[],
  hard: readonly WindowRule[],
): readonly WindowRule[] {
  const onlySoft = soft.filter(({ id }) => !hard.some((rule) => rule.id === id));
  const both = hard.map((rule) => {
    const other = soft.find(({ id }) => id === rule.id);
    return other === undefined ? rule : { ...rule, stretches: rule.stretches.map(beside(other)) };
  });
  return [...both, ...onlySoft];
}

const beside =
  (other: WindowRule) =>
  (stretch: Stretch, index: number): Stretch => {
    const twin = other.stretches[index];
    if (twin?.meaning !== stretch.meaning) return stretch;
    if (stretch.from === undefined || twin.from === undefined) return stretch;
    const of: readonly Edge[] = [twin.from, stretch.from];
    const opens = stretch.meaning === 'go' || stretch.meaning === 'wait';
    return { ...stretch, from: { kind: opens ? 'latest' : 'earliest', of } };
  };
