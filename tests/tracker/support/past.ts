import type {
  BenchFact,
  BenchFactBodies,
  Expectation,
  Part,
  PieceDescription,
  Target,
  Teller,
} from '../../../src/tracker/bench/index.ts';
import type { Instant } from '../../../src/tracker/time/index.ts';
import type { FinishingSchedule } from '../../../src/tracker/trade/index.ts';
import type { StampEvent } from '../../../src/tracker/windows/index.ts';
import { morning } from './instants.ts';

type More = { readonly at?: Instant; readonly group?: string; readonly by?: Teller };

export const target = (
  piece: string,
  step: string | null = null,
  part: string | null = null,
): Target => ({
  piece,
  part,
  step,
});

const guess: Expectation = {
  minutes: 30,
  low: 20,
  high: 50,
  chance: 0.8,
  model: 'finishing schedule',
};

/** Facts as they lie in the store, told one after another; each call is a key press of its own unless `group` joins them. */
export class Past {
  readonly facts: readonly BenchFact[];

  constructor(facts: readonly BenchFact[] = []) {
    this.facts = facts;
  }

  /** Any fact at all. */
  told<Kind extends keyof BenchFactBodies>(
    kind: Kind,
    body: BenchFactBodies[Kind],
    more: More = {},
  ): Past {
    const number = this.facts.length + 1;
    const at = more.at ?? morning;
    const fact = {
      id: `fact-${number}`,
      group: more.group ?? `press-${number}`,
      at,
      told: at,
      by: more.by ?? 'person',
      uptimeMs: null,
      bootId: null,
      kind,
      body,
    } as BenchFact;
    return new Past([...this.facts, fact]);
  }

  added(
    piece: string,
    plan: FinishingSchedule,
    more: More & { readonly number?: number; readonly name?: string } = {},
  ): Past {
    return this.told(
      'piece-added',
      {
        piece,
        number: more.number ?? 1,
        name: more.name ?? piece,
        schedule: { id: plan.id, name: plan.name, hash: plan.hash },
        steps: plan.steps,
        products: plan.products,
      },
      more,
    );
  }

  described(piece: string, changes: PieceDescription): Past {
    return this.told('piece-described', { piece, changes });
  }

  parts(piece: string, ...names: readonly string[]): Past {
    const parts: readonly Part[] = names.map((name) => ({ id: name, name }));
    return this.told('parts-named', { piece, parts });
  }

  pickedUp(
    session: string,
    at: Instant,
    targets: readonly Target[],
    hand = 1,
    more: More = {},
  ): Past {
    return this.told('picked-up', { session, targets, hand }, { ...more, at });
  }

  putDown(session: string, at: Instant, more: More = {}): Past {
    return this.told('put-down', { session }, { ...more, at });
  }

  stamped(
    piece: string,
    step: string,
    event: StampEvent,
    at: Instant,
    more: More & {
      readonly part?: string;
      readonly agent?: string;
      readonly pass?: number;
      readonly section?: number;
    } = {},
  ): Past {
    const { part = null, agent = null, pass = 1, section = null, ...head } = more;
    return this.told(
      'stamped',
      { piece, part, step, event, agent, pass, section, air: null },
      { ...head, at },
    );
  }

  done(
    piece: string,
    step: string,
    at: Instant,
    more: More & { readonly part?: string; readonly pass?: number } = {},
  ): Past {
    const { part = null, pass = 1, ...head } = more;
    return this.told(
      'step-done',
      { piece, part, step, pass, expectation: guess, air: null },
      { ...head, at },
    );
  }
}

export const past = (): Past => new Past();
