import type { IntentContext, PingSense } from '../tracker/bench/index.ts';
import type { Reading } from '../tracker/trade/index.ts';
import type { ConditionsFact } from '../tracker/bench/index.ts';
import type { Settings } from '../tracker/settings/index.ts';
import type { Instant } from '../tracker/time/index.ts';
import { shopDay } from '../views/format/index.ts';
import type { Shop } from '../views/port.ts';

/** All that goes in with an intent. */
export const contextOf = (given: {
  readonly now: Instant;
  readonly at: Instant | undefined;
  readonly group: string;
  readonly settings: Settings;
  readonly shop: Shop;
  readonly sense: PingSense;
  readonly readings: readonly Reading[];
}): IntentContext => {
  const at = given.at ?? given.now;
  const reading = given.readings.findLast((each) => each.at <= at);
  return {
    now: given.now,
    group: given.group,
    ...(given.at === undefined ? {} : { at: given.at }),
    hands: given.settings.helper ? 2 : 1,
    air:
      reading === undefined ? null : { tempC: reading.tempC, rh: reading.rh, readAt: reading.at },
    sense: given.sense,
    today: shopDay(given.now, given.shop.zone),
  };
};

/** The readings in the order of their instants: one told later may be of an earlier hour. */
export const readingsOf = (facts: readonly ConditionsFact[]): readonly Reading[] =>
  facts
    .map((fact): Reading => ({ at: fact.at, ...fact.body }))
    .sort((one, other) => one.at - other.at);
