import {
  decide,
  foldBench,
  type Bench,
  type BenchFact,
  type Estimator,
  type Intent,
  type Piece,
} from '../../../src/tracker/bench/index.ts';
import { estimatorFrom, notTaught, teachBench } from '../../../src/tracker/learning/index.ts';
import { standardSettings, type Settings } from '../../../src/tracker/settings/index.ts';
import type { Instant, Milliseconds } from '../../../src/tracker/time/index.ts';
import type {
  Climate,
  FinishingSchedule,
  Product,
  Reading,
} from '../../../src/tracker/trade/index.ts';
import { shopDay } from '../../../src/views/format/index.ts';
import type { BenchPort, Shop, ShownPing, Snapshot, Ticks } from '../../../src/views/port.ts';
import { sense, shop as utcShop, snapshotOf } from './bench-of.ts';

export type FakePortOptions = {
  readonly now: Instant;
  readonly facts?: readonly BenchFact[];
  readonly shop?: Partial<Shop>;
  readonly settings?: Partial<Settings>;
  readonly readings?: readonly Reading[];
  readonly pings?: readonly ShownPing[];
  readonly snapshot?: Partial<Snapshot>;
  /** What reading the finishing schedules brings; a promise that a test settles itself may be given. */
  readonly schedules?: Promise<readonly FinishingSchedule[]> | readonly FinishingSchedule[];
  readonly products?: readonly Product[];
  readonly scheduleProblems?: readonly string[];
  /** Minutes are expected after what its bench teaches, as in the program. */
  readonly learns?: boolean;
  /** Why writing a reading fails. */
  readonly readingFails?: string;
};

const learnedFrom = (bench: Bench): Estimator => ({
  ...estimatorFrom(() => teachBench(notTaught, bench).minutes),
  afterwards: learnedFrom,
});

/**
 * A port on the real core: intents are decided and folded as in the program, on facts that are only kept in memory.
 * Time stands still until it is moved.
 */
export class FakePort implements BenchPort {
  now: Instant;
  readonly asked: Intent[] = [];
  readonly acknowledged: string[] = [];
  /** How many times any were: each is a write. */
  acknowledgements = 0;
  private facts: BenchFact[];
  private readings: readonly Reading[];
  private readonly shop: Shop;
  private readonly settings: Settings;
  private readonly listeners = new Set<() => void>();
  private groups = 0;
  private readonly options: FakePortOptions;

  constructor(options: FakePortOptions) {
    this.options = options;
    this.now = options.now;
    this.facts = [...(options.facts ?? [])];
    this.readings = options.readings ?? [];
    this.shop = { ...utcShop, ...options.shop };
    this.settings = { ...standardSettings, ...options.settings };
  }

  get bench(): Bench {
    const bench = foldBench(this.facts);
    return this.options.learns === true ? { ...bench, estimator: learnedFrom(bench) } : bench;
  }

  piece(id: string): Piece {
    const piece = this.bench.pieces.get(id);
    if (piece === undefined) throw new Error(`no piece ${id}`);
    return piece;
  }

  /** Names of a piece's steps, those that are skipped in brackets. */
  steps(id: string): readonly string[] {
    return this.piece(id).steps.map(({ name, skipped }) => (skipped ? `(${name})` : name));
  }

  readonly ticks: Ticks = {
    subscribe: (listener) => this.subscribe(listener),
    now: () => this.now,
    present: () => this.now,
    pace: () => undefined,
  };

  wait(ms: Milliseconds): void {
    this.now += ms;
    this.changed();
  }

  readonly subscribe = (listener: () => void): (() => void) => {
    this.listeners.add(listener);
    return () => this.listeners.delete(listener);
  };

  readonly snapshot = (): Snapshot =>
    snapshotOf(this.bench, {
      shop: this.shop,
      settings: this.settings,
      readings: this.readings,
      pings: (this.options.pings ?? []).map((ping) =>
        this.acknowledged.includes(ping.claim) ? { ...ping, seenAt: this.now } : ping,
      ),
      ...this.options.snapshot,
    });

  readonly act: BenchPort['act'] = (intent, at) => {
    this.asked.push(intent);
    this.groups += 1;
    const group = `key${this.groups}`;
    const air = this.readings.at(-1);
    const outcome = decide(this.bench, intent, {
      now: this.now,
      group,
      ...(at === undefined ? {} : { at }),
      hands: this.settings.helper ? 2 : 1,
      air: air === undefined ? null : { tempC: air.tempC, rh: air.rh, readAt: air.at },
      sense,
      today: shopDay(this.now, this.shop.zone),
    });
    if (!outcome.ok) return { nearest: [], ...outcome.refusal, ok: false };
    const head = { group, told: this.now, by: 'person', uptimeMs: null, bootId: null } as const;
    const told = outcome.facts.map((fact, index): BenchFact => ({
      ...fact,
      ...head,
      id: `${group}.${index + 1}`,
      at: fact.at ?? this.now,
    }));
    this.facts = [...this.facts, ...told];
    this.changed();
    const { says, piece, warns } = outcome;
    return { ok: true, says, piece, ...(warns === undefined ? {} : { warns }) };
  };

  readonly takeReading = (climate: Climate): ReturnType<BenchPort['takeReading']> => {
    if (this.options.readingFails !== undefined)
      return { ok: false, says: this.options.readingFails, nearest: [] };
    this.readings = [...this.readings, { ...climate, at: this.now }];
    this.changed();
    return { ok: true, says: 'conditions noted', piece: null };
  };

  get lastReading(): Reading | undefined {
    return this.readings.at(-1);
  }

  readonly acknowledge = (claims: readonly string[]): void => {
    this.acknowledged.push(...claims);
    this.acknowledgements += 1;
    this.changed();
  };

  readonly choose = (): never => {
    throw new Error('nobody was to change a setting');
  };

  readonly schedules = async (): ReturnType<BenchPort['schedules']> => ({
    schedules: await (this.options.schedules ?? []),
    products: this.options.products ?? [],
    problems: this.options.scheduleProblems ?? [],
  });

  readonly past = (): ReturnType<BenchPort['past']> =>
    Promise.resolve({ bench: this.bench, problems: [] });

  /** What was asked of looking back, in order. */
  readonly lookedBack: string[] = [];

  readonly lookBack: NonNullable<BenchPort['lookBack']> = {
    begin: () => this.lookedBack.push('begin'),
    backTest: () => this.lookedBack.push('back-test'),
    find: (piece) => this.lookedBack.push(`find ${piece}`),
    stop: () => this.lookedBack.push('stop'),
    end: () => this.lookedBack.push('end'),
  };

  readonly pingWays = (): ReturnType<BenchPort['pingWays']> => ({ desktop: null, says: '' });

  private changed(): void {
    for (const listener of this.listeners) listener();
  }
}
