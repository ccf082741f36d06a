import {
  decide,
  foldBench,
  standingOf,
  standingsAt,
  windowsOfPiece,
  type Bench,
  type BenchFact,
  type Intent,
  type NewBenchFact,
  type Piece,
  type PingSense,
  type Standing,
  type Teller,
} from '../../../src/tracker/bench/index.ts';
import type { Instant } from '../../../src/tracker/time/index.ts';
import type { FinishingSchedule } from '../../../src/tracker/trade/index.ts';
import { stateAt, type Window, type WindowState } from '../../../src/tracker/windows/index.ts';
import { contextAt, type Circumstances } from './given-when-then.ts';
import { labelSense } from './sense.ts';

/** New facts with their heads, as they go into the store. */
export const headed = (
  facts: readonly NewBenchFact[],
  group: string,
  now: Instant,
  by: Teller = 'person',
): readonly BenchFact[] =>
  facts.map(({ at, ...fact }, index) => {
    const told: object = {
      id: `${group}.${index + 1}`,
      group,
      at: at ?? now,
      told: now,
      by,
      uptimeMs: null,
      bootId: null,
      ...fact,
    };
    return told as BenchFact;
  });

/**
 * A day at the bench, told through the one door: every deed is decided on and folded in. What is refused ends the test,
 * with the refusal.
 */
export class Workday {
  facts: readonly BenchFact[] = [];
  bench: Bench = foldBench([]);
  /** The words that the last deed was confirmed with. */
  said = '';
  /** What was wrong with it all the same, if anything. */
  warned: string | null = null;
  private presses = 0;
  private readonly circumstances: Circumstances;

  constructor(circumstances: Circumstances = {}) {
    this.circumstances = circumstances;
  }

  get sense(): PingSense {
    return (this.circumstances.sense as PingSense | undefined) ?? labelSense;
  }

  /** Does something at an instant; `more.at` if it is about an earlier one. */
  does(intent: Intent, now: Instant, more: Circumstances = {}): this {
    const refusal = this.tries(intent, now, more);
    if (refusal !== null) throw new Error(`${intent.do}: ${refusal}`);
    return this;
  }

  /** Does it if it may be done; else gives the refusal's words and changes nothing. */
  tries(intent: Intent, now: Instant, more: Circumstances = {}): string | null {
    const group = `press-${this.presses + 1}`;
    const context = contextAt(now, { ...this.circumstances, group, ...more });
    const outcome = decide(this.bench, intent, context);
    if (!outcome.ok) return outcome.refusal.says;
    this.presses += 1;
    this.said = outcome.says;
    this.warned = outcome.warns ?? null;
    const facts = headed(outcome.facts, group, now);
    this.facts = [...this.facts, ...facts];
    this.bench = foldBench(this.facts);
    return null;
  }

  /** Adds a piece and gives its id. */
  adds(name: string, schedule: FinishingSchedule, now: Instant): string {
    this.does({ do: 'add piece', name, schedule }, now);
    return `press-${this.presses}`;
  }

  next(piece: string, now: Instant, part: string | null = null): this {
    return this.does({ do: 'next stamp', piece, part }, now);
  }

  firstStroke(piece: string, now: Instant, part: string | null = null): this {
    return this.does({ do: 'first stroke', piece, part }, now);
  }

  done(piece: string, now: Instant, part: string | null = null): this {
    return this.does({ do: 'done', piece, part }, now);
  }

  checks(
    piece: string,
    finding: 'ready' | 'not yet' | 'trouble',
    now: Instant,
    window?: string,
  ): this {
    const which = window === undefined ? {} : { window: this.window(piece, window).key };
    return this.does({ do: 'check', piece, part: null, finding, ...which }, now);
  }

  takesBack(now: Instant): this {
    return this.does({ do: 'take back' }, now);
  }

  piece(id: string): Piece {
    const found = this.bench.pieces.get(id);
    if (found === undefined) throw new Error(`no piece ${id}`);
    return found;
  }

  windows(piece: string, rule?: string): readonly Window[] {
    const all = windowsOfPiece(this.piece(piece), this.bench.sessions, this.sense);
    return rule === undefined ? all : all.filter((window) => window.rule.id === rule);
  }

  /** The only, or the `index`-th, window that a rule has begun on a piece. */
  window(piece: string, rule: string, index = 0): Window {
    const found = this.windows(piece, rule).at(index);
    if (found === undefined) throw new Error(`no window ${rule} on ${piece}`);
    return found;
  }

  state(piece: string, rule: string, now: Instant, index = 0): WindowState {
    return stateAt(this.window(piece, rule, index), now);
  }

  standing(piece: string, now: Instant): Standing {
    return standingOf(this.bench, this.piece(piece), now, this.sense);
  }

  standings(now: Instant): readonly Standing[] {
    return standingsAt(this.bench, now, this.sense);
  }
}
