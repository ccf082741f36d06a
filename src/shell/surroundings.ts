import type { Loaded } from '../persist/index.ts';
import type { PingSense } from '../tracker/bench/index.ts';
import type { Reading } from '../tracker/trade/index.ts';
import type { Settings } from '../tracker/settings/index.ts';
import type { Shop } from '../views/port.ts';
import { readingsOf } from './intent-context.ts';
import { senseIn } from './shop-air.ts';
import { shopOf, type Whereabouts } from './shop.ts';

/** What an intent is decided by, beside the bench itself. */
export type Surroundings = {
  readonly settings: Settings;
  readonly shop: Shop;
  readonly sense: PingSense;
  readonly readings: readonly Reading[];
};

type Read = Pick<Loaded, 'settings' | 'conditions'>;

/** The surroundings as the store has them; for a store in which they stayed the same, the same objects. */
export function createSurroundings(here: Whereabouts): (read: Read) => Surroundings {
  let last: { readonly read: Read; readonly found: Surroundings } | null = null;
  return (read) => {
    const isSameShop = last?.read.settings === read.settings;
    const isSameAir = last?.read.conditions === read.conditions;
    if (last !== null && isSameShop && isSameAir) return last.found;
    const { settings } = read;
    const shop = last !== null && isSameShop ? last.found.shop : shopOf(settings, here);
    const readings = last !== null && isSameAir ? last.found.readings : readingsOf(read.conditions);
    // Windows are worked out anew for a new sense.
    const found = { settings, shop, readings, sense: senseIn(shop, settings, readings) };
    last = { read: { settings, conditions: read.conditions }, found };
    return found;
  };
}
