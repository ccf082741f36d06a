import type { Chemistry, Climate } from '../climate.ts';
import { vapourPa, wetBulbC } from './humidity.ts';
import { saturationPa } from './saturation.ts';

/** Evaporation is known well enough between these times of the label; beyond them the figure stays at the limit. */
const evaporationMin = 0.5;
const evaporationMax = 4;
/** Moisture-cure (common practice, no source): half the label's humidity takes twice as long, damp air brings nothing. */
const dryAirMax = 4;
/** Air that holds all it can drives nothing, and nothing can't be divided by. */
const leastDrivePa = 1;

/** A label's time in other air: `2` takes twice as long as the label says, `0.5` half as long. Always above 0. */
export function timeFactor(chemistry: Chemistry, statedFor: Climate, air: Climate): number {
  switch (chemistry) {
    case 'waterborne':
      return within(drive(statedFor) / drive(air), evaporationMin, evaporationMax);
    case 'oxidative':
    case 'two-part':
    case 'evaporative':
      return 2 ** ((statedFor.tempC - air.tempC) / 10);
    case 'moisture-cure':
      return within(statedFor.rh / air.rh, 1, dryAirMax);
    case 'glue':
    case 'reaction':
      return 1;
  }
}

/** Chemistries of which a label's time is moved by the air, and in which directions it may be. */
export function airMoves(chemistry: Chemistry, may: 'grow' | 'shrink'): boolean {
  switch (chemistry) {
    case 'waterborne':
    case 'oxidative':
    case 'two-part':
      return true;
    // Solvent that leaves sooner brings no closing forward; nor does air that is dry.
    case 'evaporative':
    case 'moisture-cure':
      return may === 'grow';
    case 'glue':
    case 'reaction':
      return false;
  }
}

/** What drives water out of a film that cools itself as it dries, in pascal: the vapour over it, less what the air holds. */
const drive = (air: Climate): number =>
  Math.max(leastDrivePa, saturationPa(wetBulbC(air)) - vapourPa(air));

const within = (value: number, least: number, most: number): number =>
  Math.min(most, Math.max(least, value));
