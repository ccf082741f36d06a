import { hour, type Milliseconds } from '../../time/index.ts';
import type { Reading } from '../../trade/climate.ts';

/** What is known of the air in the shop. */
export type ShopAir = {
  /** In the order of their instants. */
  readonly readings: readonly Reading[];
  /** How cold the shop usually gets at night, in degrees Celsius; null where that is not known. */
  readonly nightLowC: number | null;
};

/**
 * How long a reading tells of the air: four hours, as often as painters are told to check (US federal painting manual,
 * section 9.6.6). From then on the worse of it and the usual night low counts.
 */
export const readingHoldsFor: Milliseconds = 4 * hour;
