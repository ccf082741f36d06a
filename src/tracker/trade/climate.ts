import type { Instant } from '../time/index.ts';

/** Air: temperature in degrees Celsius, relative humidity in percent. */
export type Climate = { readonly tempC: number; readonly rh: number };

/** What a meter showed. */
export type Metered = Climate & {
  /** The temperature of a surface to be coated, in degrees Celsius, where that was measured too. */
  readonly surfaceC?: number;
};

/** Conditions of the shop as somebody read them. */
export type Reading = Metered & { readonly at: Instant };

/** How a product dries or sets, which decides what air does to its times. */
export type Chemistry =
  | 'waterborne'
  | 'oxidative'
  | 'evaporative'
  | 'two-part'
  | 'moisture-cure'
  | 'glue'
  /** A chemical reaction on the surface (bleach, stripper, stain) whose times are the label's alone. */
  | 'reaction';
