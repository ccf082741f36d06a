import { dryingChance, type MilestoneDrying } from '../../tracker/learning/index.ts';
import { minute } from '../../tracker/time/index.ts';
import type { Product } from '../../tracker/trade/index.ts';
import type { DryingJson } from '../json-shapes/index.ts';
import { timesNow } from '../line/drying-now.ts';
import type { Look } from '../line/look.ts';
import { iso } from './iso.ts';

export type ProductTold = {
  readonly product: Product;
  readonly milestones: readonly MilestoneDrying[];
};

export const dryingJson = (told: readonly ProductTold[], look: Look): DryingJson => ({
  learns: look.settings.learnDrying,
  products: told.map(({ product: { id, name }, milestones }) => ({
    id,
    name,
    milestones: milestones.map((each) => milestoneJson(each, look)),
  })),
});

function milestoneJson(
  drying: MilestoneDrying,
  look: Look,
): DryingJson['products'][number]['milestones'][number] {
  const { milestone, label, yours, coats, found, opens, keptOut, lastCoats } = drying;
  const { settings, shop } = look;
  const own = settings.learnDrying ? opens : null;
  return {
    milestone,
    labelMinutes: label / minute,
    yours:
      yours === null
        ? null
        : {
            medianMinutes: yours.median,
            lowMinutes: yours.low,
            highMinutes: yours.high,
            chance: dryingChance,
          },
    coats,
    foundReady: found,
    opensMinutes: (own?.ms ?? label) / minute,
    opensBy: own === null ? 'label' : 'checks',
    timesInAirNow: timesNow(drying, look),
    keptOut: keptOut.map(({ at, because }) => ({ lastStroke: iso(at, shop.zone), because })),
    lastCoats: lastCoats.map(({ at, notYet, ready }) => ({
      lastStroke: iso(at, shop.zone),
      notYet,
      ready,
    })),
  };
}
