import type { Instant } from '../time/index.ts';

/** Air: temperature in degrees Celsius, relative humidity in percent. */
export type Climate = { readonly tempC: number; readonly rh: number };

/** Conditions of the shop as somebody read them. */
export type Reading = Climate & { readonly at: Instant };

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
