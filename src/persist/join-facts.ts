import type { Leaving } from './store.ts';

/** Adds facts that are not there yet, told by their ids; gives the same list back if none is new. */
export function joinFacts<Fact extends { readonly id: string }>(
  before: readonly Fact[],
  added: readonly Fact[] = [],
): readonly Fact[] {
  if (added.length === 0) return before;
  const known = new Set(before.map(({ id }) => id));
  const fresh = added.filter(({ id }) => !known.has(id) && known.add(id));
  return fresh.length === 0 ? before : [...before, ...fresh];
}

/** Readings or pings without those that nobody needs; the same list where none goes. */
export function withoutNeedless<Fact extends { readonly id: string }>(
  facts: readonly Fact[],
  needless: ReadonlySet<string> = new Set(),
): readonly Fact[] {
  const kept = facts.filter(({ id }) => !needless.has(id));
  return kept.length === facts.length ? facts : kept;
}

/** Ids of the facts that no piece still on the bench needs. */
export const idsLeaving = (pieces: readonly Leaving[]): ReadonlySet<string> =>
  new Set(
    pieces.flatMap(({ facts, shared }) =>
      facts.map(({ id }) => id).filter((id) => !shared?.has(id)),
    ),
  );
