import type { Standing } from '../../tracker/bench/index.ts';
import type { Instant, Milliseconds } from '../../tracker/time/index.ts';

/** The rows as they were drawn last, and which of them changed their place when. */
export type RowOrder = {
  readonly rows: readonly Pick<Standing, 'key' | 'rank'>[];
  readonly movedAt: ReadonlyMap<string, Instant>;
};

/** Long enough for eyes that come back from the work to see what is new. */
const isMarkedFor: Milliseconds = 10_000;

/** The order after the one before (null: nothing was drawn yet). */
export function orderAfter(
  before: RowOrder | null,
  rows: RowOrder['rows'],
  now: Instant,
): RowOrder {
  const marked = [...(before?.movedAt ?? [])].filter(([, at]) => now - at < isMarkedFor);
  const moved = before === null ? [] : movedBetween(before.rows, rows);
  return {
    rows: rows.map(({ key, rank }) => ({ key, rank })),
    movedAt: new Map([...marked, ...moved.map((key) => [key, now] as const)]),
  };
}

/**
 * The fewest rows whose moving makes one order of the other; of two that changed places, the one that stands otherwise
 * than before. Rows that came or went have moved no other.
 */
function movedBetween(before: RowOrder['rows'], after: RowOrder['rows']): readonly string[] {
  const places = new Map(before.map(({ key }, place) => [key, place]));
  const ranks = new Map(before.map(({ key, rank }) => [key, rank]));
  const both = after.flatMap(({ key, rank }) => {
    const was = places.get(key);
    return was === undefined ? [] : [{ key, was, weight: ranks.get(key) === rank ? 1000 : 999 }];
  });
  const isInOrder = both.every(
    ({ was }, index) => index === 0 || was > (both[index - 1]?.was ?? 0),
  );
  if (isInOrder) return [];
  const stayed = heaviestRising(both);
  return both.flatMap(({ key }) => (stayed.has(key) ? [] : [key]));
}

type Row = { readonly key: string; readonly was: number; readonly weight: number };
type Run = { readonly keys: readonly string[]; readonly weight: number };

/** The rows that keep their order among each other, as many as there are. */
function heaviestRising(rows: readonly Row[]): ReadonlySet<string> {
  const runs: Run[] = [];
  for (const [index, { key, was, weight }] of rows.entries()) {
    const joined = rows
      .slice(0, index)
      .flatMap((row, place) => (row.was < was ? (runs[place] ?? []) : []))
      .reduce<Run>((best, run) => (run.weight > best.weight ? run : best), { keys: [], weight: 0 });
    runs.push({ keys: [...joined.keys, key], weight: joined.weight + weight });
  }
  const best = runs.reduce<Run>((most, run) => (run.weight > most.weight ? run : most), {
    keys: [],
    weight: 0,
  });
  return new Set(best.keys);
}
