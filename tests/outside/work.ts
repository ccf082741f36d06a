import {
  decide,
  foldBench,
  windowsOfPiece,
  windowsOfPot,
  type Bench,
  type BenchFact,
  type Intent,
  type Outcome,
  type Piece,
  type Wood,
} from '../../src/tracker/bench/index.ts';
import type { FinishingSchedule, PlannedStamp, Product } from '../../src/tracker/trade/index.ts';
import { hour, minute, type Instant } from '../../src/tracker/time/index.ts';
import type { EdgeSense, Window } from '../../src/tracker/windows/index.ts';

/** A Monday morning in winter; any instant would do. */
export const monday: Instant = Date.UTC(2026, 1, 2, 8, 0);

/** The label's own climate: no span is moved. */
export const atTheLabel: EdgeSense = {
  spanEnd: (span, from) => from + span.ms,
  nextClock: (from) => from,
};

/** One piece worked through the program's own door, without store or screen. */
export class Work {
  private facts: readonly BenchFact[] = [];
  private groups = 0;
  bench: Bench = foldBench([]);
  private readonly id: string;

  constructor(schedule: FinishingSchedule, wood: Wood | null = 'hard') {
    const outcome = this.act({ do: 'add piece', name: 'Test chest', schedule }, monday);
    this.id = outcome.piece ?? '';
    if (wood !== null)
      this.act({ do: 'describe piece', piece: this.id, changes: { wood } }, monday);
  }

  get piece(): Piece {
    const piece = this.bench.pieces.get(this.id);
    if (piece === undefined) throw new Error('the piece is not there');
    return piece;
  }

  /** Does it, or fails with the refusal. */
  act(intent: Intent, now: Instant): Extract<Outcome, { ok: true }> {
    this.groups += 1;
    const group = `group${this.groups}`;
    const context = { now, group, hands: 1, air: null, sense: atTheLabel, today: '2026-02-02' };
    const outcome = decide(this.bench, intent, context);
    if (!outcome.ok) throw new Error(outcome.refusal.says);
    const head = { group, told: now, by: 'person', uptimeMs: null, bootId: null } as const;
    const made = outcome.facts.map((fact, index) => ({
      ...fact,
      ...head,
      id: `${group}-${index}`,
      at: fact.at ?? now,
    }));
    this.facts = [...this.facts, ...made];
    this.bench = foldBench(this.facts);
    return outcome;
  }

  /** Presses Space. */
  press(now: Instant): string {
    return this.act({ do: 'next stamp', piece: this.id, part: null }, now).says;
  }

  done(now: Instant): void {
    this.act({ do: 'done', piece: this.id, part: null }, now);
  }

  stamp(
    event:
      | 'topped-up'
      | 'covered'
      | 'uncovered'
      | 'turned'
      | 'in-clamps'
      | 'mixed'
      | 'washed-out'
      | 'clamps-off',
    now: Instant,
  ): void {
    this.act({ do: 'stamp', piece: this.id, part: null, event }, now);
  }

  check(finding: 'ready' | 'not yet', window: string, now: Instant): void {
    this.act({ do: 'check', piece: this.id, part: null, finding, window }, now);
  }

  /** Those of the piece and of every pot that was mixed. */
  windows(): readonly Window[] {
    return [
      ...windowsOfPiece(this.piece, this.bench.sessions, atTheLabel),
      ...this.bench.pots.flatMap((pot) => windowsOfPot(pot, atTheLabel)),
    ];
  }

  /** The last window with that id. */
  window(id: string): Window {
    const found = this.windows().findLast((window) => window.rule.id === id);
    if (found === undefined) throw new Error(`no window ${id}`);
    return found;
  }
}

/** A schedule of one step that uses a product, and one after it that waits for everything the product starts. */
export function oneStep(
  product: Product,
  stamps: readonly PlannedStamp[] = [{ event: 'first-stroke', says: 'first stroke on' }],
  passes?: number,
): FinishingSchedule {
  const step = {
    stepClass: 'other',
    minutes: { typical: 20, low: 10, high: 40 },
    driver: 'area',
    setupMinutes: 0,
    windows: [],
    cautions: [],
  } as const;
  const started = product.windows.flatMap((rule) => rule.milestone ?? []);
  const use = { product: product.id, stamps, ...(passes === undefined ? {} : { passes }) };
  return {
    id: 'one-step',
    name: 'One step',
    summary: 'the product alone',
    hash: '0',
    products: { [product.id]: product },
    steps: [
      { ...step, id: 'it', name: 'put it on', needs: [], ...use },
      { ...step, id: 'then', name: 'what waits for it', needs: started, stamps: [] },
    ],
  };
}

/** Puts a coat on: first stroke at `monday`, last stroke a while later. */
export function coatOn(product: Product, brushing = 12 * minute): Work {
  const work = new Work(oneStep(product));
  work.press(monday);
  work.done(monday + brushing);
  return work;
}

/** Hours from one instant to another. */
export const hoursFrom = (from: Instant, to: Instant | null | undefined): number =>
  to === null || to === undefined ? Number.NaN : (to - from) / hour;
