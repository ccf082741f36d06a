import type { PlannedStamp, Product } from './schedule.ts';

/** What a product has that goes on one after the other, as its windows name it: `A` and `B` of a bleach; mostly nothing. */
export function agentsOf(product: Product): readonly string[] {
  const found = new Set<string>();
  const look = (value: unknown): void => {
    if (typeof value !== 'object' || value === null) return;
    for (const [key, within] of Object.entries(value)) {
      if (key === 'agent' && typeof within === 'string') found.add(within);
      else look(within);
    }
  };
  look([product.windows, product.byWood]);
  return [...found].toSorted();
}

/**
 * The key presses of a step for another product: a stroke for each of its agents, where those are not the step's own. No
 * key is to ask for a B of what has none.
 */
export function stampsFor(
  stamps: readonly PlannedStamp[],
  product: Product,
): readonly PlannedStamp[] {
  const agents = agentsOf(product);
  const own = new Set(stamps.flatMap(({ agent }) => agent ?? []));
  if (own.size === agents.length && agents.every((agent) => own.has(agent))) return stamps;
  const isStroke = ({ event, agent }: PlannedStamp): boolean =>
    event === 'first-stroke' || agent !== undefined;
  const strokes: readonly PlannedStamp[] =
    agents.length === 0
      ? [{ event: 'first-stroke', says: 'first stroke on' }]
      : agents.map((agent) => ({
          event: 'first-stroke',
          agent,
          says: `${agent}, first stroke on`,
        }));
  return [...strokes, ...stamps.filter((stamp) => !isStroke(stamp))];
}
