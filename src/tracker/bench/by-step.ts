/** Records of a piece by the step that they are for, each list in the order of telling. */
type ByStep<Entry> = ReadonlyMap<string, readonly Entry[]>;

const known = new WeakMap<readonly unknown[], ByStep<unknown>>();

/**
 * Sorted once for each list: a list never changes, and every step of every row of the bench asks for its own records
 * again and again.
 */
export function byStep<Entry extends { readonly step: string }>(
  entries: readonly Entry[],
): ByStep<Entry> {
  const before = known.get(entries);
  // What is kept under a list was sorted from that list.
  if (before !== undefined) return before as ByStep<Entry>;
  const sorted = new Map<string, Entry[]>();
  for (const entry of entries) {
    const own = sorted.get(entry.step);
    if (own === undefined) sorted.set(entry.step, [entry]);
    else own.push(entry);
  }
  known.set(entries, sorted);
  return sorted;
}
