import {
  decide,
  type Bench,
  type BenchFact,
  type ClockReading,
  type Intent,
} from '../tracker/bench/index.ts';
import type { Instant } from '../tracker/time/index.ts';
import { headFacts } from './head-facts.ts';
import { contextOf } from './intent-context.ts';
import type { Surroundings } from './surroundings.ts';

/** What the clock shows when something is told, when it happened if that was earlier, and the id that its facts are named after. */
export type Telling = {
  readonly clock: ClockReading;
  readonly at: Instant | undefined;
  readonly group: string;
};

/** Facts ready to be stored, or a refusal. `nearest` is null where no name was unknown. */
export type Applied =
  | {
      readonly ok: true;
      readonly facts: readonly BenchFact[];
      readonly says: string;
      readonly piece: string | null;
      readonly warns?: string;
    }
  | {
      readonly ok: false;
      readonly says: string;
      readonly nearest: readonly string[] | null;
      readonly couldPutDown?: readonly string[];
    };

/** The one way from an intent to facts, for keys and commands alike. */
export function applyIntent(
  bench: Bench,
  intent: Intent,
  { clock, at, group }: Telling,
  around: Surroundings,
): Applied {
  const outcome = decide(bench, intent, contextOf({ now: clock.told, at, group, ...around }));
  if (!outcome.ok) {
    const { says, nearest = null, couldPutDown } = outcome.refusal;
    return { ok: false, says, nearest, ...(couldPutDown === undefined ? {} : { couldPutDown }) };
  }
  return {
    ok: true,
    // What the clock told is nobody's deed, and can't be taken back.
    facts: headFacts(
      outcome.facts,
      group,
      clock,
      intent.do === 'note clock step' ? 'clock' : 'person',
    ),
    says: outcome.says,
    piece: outcome.piece,
    ...(outcome.warns === undefined ? {} : { warns: outcome.warns }),
  };
}
