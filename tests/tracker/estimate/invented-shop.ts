import {
  decide,
  foldBench,
  type Bench,
  type BenchFact,
  type Intent,
  type IntentContext,
  type Piece,
} from '../../../src/tracker/bench/index.ts';
import { minute, type Instant } from '../../../src/tracker/time/index.ts';
import type { FinishingSchedule, Step } from '../../../src/tracker/trade/index.ts';

/** Label times as they stand; the shop's clock is UTC. */
export const sense: IntentContext['sense'] = {
  spanEnd: (span, from) => from + span.ms,
  nextClock: (from) => from,
};

/** Mon 16 Nov 2026 09:00 UTC */
export const monday: Instant = Date.UTC(2026, 10, 16, 9);

/** A step with little to it. */
export const step = (id: string, given: Partial<Step> = {}): Step => ({
  id,
  name: id,
  stepClass: 'other',
  minutes: { typical: 30, low: 20, high: 50 },
  driver: 'fixed',
  setupMinutes: 0,
  stamps: [],
  windows: [],
  needs: [],
  cautions: [],
  ...given,
});

export const scheduleOf = (
  steps: readonly Step[],
  products: FinishingSchedule['products'] = {},
): FinishingSchedule => ({
  id: 'invented',
  name: 'Invented schedule',
  summary: '',
  hash: 'h',
  steps,
  products,
});

/** A bench that takes intents at chosen moments, with the real rules and facts in memory. */
export type InventedShop = {
  /** Throws where the bench refuses: a test that sets something up must get it. */
  readonly act: (intent: Intent, now: Instant, at?: Instant) => string;
  readonly tries: (intent: Intent, now: Instant) => string;
  readonly bench: () => Bench;
  readonly facts: () => readonly BenchFact[];
  readonly piece: (id: string) => Piece;
  /** Adds a piece and gives its id. */
  readonly add: (name: string, schedule: FinishingSchedule, now?: Instant) => string;
  /** Picks up at `from`, finishes the current step, and puts down at `to` minutes after Monday 09:00. */
  readonly work: (piece: string, from: number, to: number) => void;
};

export function inventShop(air: IntentContext['air'] = null): InventedShop {
  let facts: readonly BenchFact[] = [];
  let groups = 0;
  const run = (intent: Intent, now: Instant, at?: Instant) => {
    groups += 1;
    const group = `g${groups}`;
    const outcome = decide(foldBench(facts), intent, {
      now,
      group,
      ...(at === undefined ? {} : { at }),
      hands: 1,
      air,
      sense,
      today: new Date(now).toISOString().slice(0, 10),
    });
    if (outcome.ok) {
      const head = { group, told: now, by: 'person', uptimeMs: null, bootId: null } as const;
      facts = [
        ...facts,
        ...outcome.facts.map((fact, index) => ({
          ...head,
          id: `${group}.${index + 1}`,
          at: fact.at ?? now,
          ...fact,
        })),
      ];
    }
    return outcome;
  };
  const act: InventedShop['act'] = (intent, now, at) => {
    const outcome = run(intent, now, at);
    if (!outcome.ok) throw new Error(outcome.refusal.says);
    return outcome.says;
  };
  const at = (minutes: number): Instant => monday + minutes * minute;
  return {
    act,
    tries: (intent, now) => {
      const outcome = run(intent, now);
      return outcome.ok ? outcome.says : outcome.refusal.says;
    },
    bench: () => foldBench(facts),
    facts: () => facts,
    piece: (id) => {
      const piece = foldBench(facts).pieces.get(id);
      if (piece === undefined) throw new Error(`no piece ${id}`);
      return piece;
    },
    add: (name, schedule, now = monday) => {
      act({ do: 'add piece', name, schedule }, now);
      return `g${groups}`;
    },
    work: (piece, from, to) => {
      act({ do: 'pick up', targets: [{ piece, part: null }] }, at(from));
      act({ do: 'done', piece, part: null }, at(to));
      act({ do: 'put down', piece }, at(to));
    },
  };
}
