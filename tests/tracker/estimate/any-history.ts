import fc from 'fast-check';
import type { Bench, Intent } from '../../../src/tracker/bench/index.ts';
import { estimatorFrom, notTaught, teachBench } from '../../../src/tracker/learning/index.ts';
import { day, minute, type Instant } from '../../../src/tracker/time/index.ts';
import { inventShop, monday, scheduleOf, step } from './invented-shop.ts';

const coat = step('coat', {
  stepClass: 'coat, brushed',
  driver: 'area',
  setupMinutes: 15,
  passes: 2,
  stamps: [{ event: 'first-stroke', says: 'first stroke on' }],
});
const schedule = scheduleOf([
  step('look', { stepClass: 'look over' }),
  step('sand', { stepClass: 'scuff', setupMinutes: 8 }),
  coat,
  step('odd', { minutes: { typical: 0, low: 0, high: 0 } }),
]);

const piece = fc.integer({ min: 0, max: 3 });
const deed = fc.record({
  wait: fc.oneof(fc.constant(0), fc.integer({ min: 1, max: 400 })),
  piece,
  other: piece,
  what: fc.constantFrom(
    'pick up',
    'pick up both',
    'put down',
    'stamp',
    'done',
    'correct end',
    'drop',
    'move to other',
    'skip',
    'repeat',
    'size',
    'off',
    'back',
    'remove',
    'take back',
    'bring back',
    'parts',
    'import',
    'take out',
    'leave out',
  ),
});
export type Deed = typeof deed extends fc.Arbitrary<infer Value> ? Value : never;

function intentOf(
  { what, piece: index, other }: Deed,
  ids: readonly string[],
  shop: ReturnType<typeof inventShop>,
): Intent {
  const id = ids[index] ?? '';
  const second = ids[other] ?? '';
  const bench = shop.bench();
  const session = bench.sessions.at(-1)?.id ?? '';
  switch (what) {
    case 'pick up':
      return { do: 'pick up', targets: [{ piece: id, part: null }] };
    case 'pick up both':
      return {
        do: 'pick up',
        targets: [
          { piece: id, part: null },
          { piece: second, part: null },
        ],
      };
    case 'put down':
      return { do: 'put down' };
    case 'stamp':
      return { do: 'next stamp', piece: id, part: null };
    case 'done':
      return { do: 'done', piece: id, part: shop.piece(id).parts[0]?.id ?? null };
    case 'correct end':
      return {
        do: 'correct session',
        session,
        end: bench.sessions.at(-1)?.start ?? 0,
      };
    case 'drop':
      return { do: 'correct session', session, dropped: true };
    case 'move to other':
      return {
        do: 'correct session',
        session,
        targets: [{ piece: second, part: null, step: 'sand' }],
      };
    case 'skip':
      return { do: 'skip step', piece: id, step: 'sand', skipped: true };
    case 'repeat':
      return { do: 'repeat step', piece: id, step: 'coat' };
    case 'size':
      return { do: 'describe piece', piece: id, changes: { areaM2: 0.05 + other } };
    case 'off':
      return { do: 'take off bench', piece: id };
    case 'back':
      return { do: 'put back on bench', piece: id };
    case 'remove':
      return { do: 'remove piece', piece: id };
    case 'take back':
      return { do: 'take back' };
    case 'bring back':
      return { do: 'bring back' };
    case 'import':
      return {
        do: 'import hours',
        file: 'old.csv',
        fingerprint: `${index} ${other}`,
        rows: [index, other, 7].map((n) => ({
          at: monday - n * 40 * day,
          piece: `Old ${n}`,
          stepClass: n === 7 ? 'strip' : 'scuff',
          minutes: 0.5 + n * n * 29,
          estimate: 1440 / (1 + n ** 3),
        })),
      };
    case 'take out':
      return { do: 'take out import', import: bench.imports?.[0]?.id ?? '' };
    case 'leave out':
      return { do: 'leave out of learning', piece: id, session: null, leave: other > 1 };
    case 'parts':
      return { do: 'name parts', piece: id, names: ['case', 'doors'] };
  }
}

/** The bench as the program holds it, with whatever it has taught. */
export const withLearned = (bench: Bench): Bench => ({
  ...bench,
  estimator: estimatorFrom(() => teachBench(notTaught, bench).minutes),
});

/** Whatever hands and corrections may do to four pieces, hours from elsewhere among it. */
export const anyDeeds = fc.array(deed, { maxLength: 60 });

/** The bench after these deeds, and when the last of them was. */
export function benchAfter(deeds: readonly Deed[]): {
  readonly bench: Bench;
  readonly now: Instant;
} {
  const shop = inventShop();
  const ids = [0, 1, 2, 3].map((number) => shop.add(`Piece ${number}`, schedule, monday));
  let now = monday;
  for (const each of deeds) {
    now += each.wait * minute;
    shop.tries(intentOf(each, ids, shop), now);
    // A key that took back the adding of a piece is no history to count.
    if (ids.some((id) => !shop.bench().pieces.has(id))) shop.tries({ do: 'bring back' }, now);
  }
  return { bench: withLearned(shop.bench()), now };
}
