import { hour, type Instant, type Milliseconds } from '../time/index.ts';
import { dewPointC, leastSurfaceC, usualAirNeeds } from '../trade/air/index.ts';
import type { Reading } from '../trade/climate.ts';
import type { Product } from '../trade/schedule.ts';
import { readingHoldsFor } from '../windows/air/shop-air.ts';
import type { Piece, PlannedStep } from './piece.ts';

/** One thing about the air that speaks against putting a coat on now, with its figures in C, percent and milliseconds. */
export type AirWarning =
  | { readonly is: 'no reading' }
  | { readonly is: 'old reading'; readonly age: Milliseconds }
  | { readonly is: 'too cold' | 'too hot'; readonly tempC: number; readonly limitC: number }
  | { readonly is: 'surface too cold'; readonly tempC: number; readonly limitC: number }
  | { readonly is: 'too damp'; readonly rh: number; readonly limit: number }
  /** `isMeasured` false: no surface was measured, and it was taken to be as warm as the air. */
  | {
      readonly is: 'near the dew point';
      readonly surfaceC: number;
      readonly dewC: number;
      readonly leastC: number;
      readonly isMeasured: boolean;
    }
  | { readonly is: 'blush'; readonly rh: number; readonly from: number }
  | { readonly is: 'carried in'; readonly since: Instant; readonly leastC: number | null };

/** From here on lacquer and shellac may turn white (common practice, no source). */
const blushFrom = 60;
const blushes = /shellac|lacquer/;

/** A piece from the cold warms through in about this time (common practice, no source). */
const warmsWithin: Milliseconds = 6 * hour;

/**
 * What the air says against the coat or glue of a step that is not done yet. A warning never blocks: nothing that decides
 * asks for it. Steps without such a product have none.
 */
export function airWarnings(
  piece: Piece,
  step: PlannedStep,
  readings: readonly Reading[],
  now: Instant,
): readonly AirWarning[] {
  const product = step.product === undefined ? undefined : piece.products[step.product];
  if (product === undefined || !isMovedByAir(product)) return [];
  const reading = readings.findLast(({ at }) => at <= now);
  const carried = carriedIn(piece, reading, now);
  if (reading === undefined) return [{ is: 'no reading' }, ...carried];
  const age = now - reading.at;
  return [
    ...carried,
    ...inAir(product, reading),
    ...(age >= readingHoldsFor ? [{ is: 'old reading', age } as const] : []),
  ];
}

/** A coat, whose film the air makes or spoils; or a glue whose label gives limits. */
const isMovedByAir = ({ chemistry, windows, needsAir }: Product): boolean =>
  needsAir !== undefined ||
  (chemistry !== 'reaction' && windows.some(({ kind }) => kind === 'coat'));

function inAir(product: Product, reading: Reading): readonly AirWarning[] {
  const { fromC, toC, rhUpTo } = { ...usualAirNeeds, ...product.needsAir };
  const { tempC, rh, surfaceC } = reading;
  const found: AirWarning[] = [];
  if (tempC < fromC) found.push({ is: 'too cold', tempC, limitC: fromC });
  if (tempC > toC) found.push({ is: 'too hot', tempC, limitC: toC });
  if (surfaceC !== undefined && surfaceC < fromC && tempC >= fromC)
    found.push({ is: 'surface too cold', tempC: surfaceC, limitC: fromC });
  if (product.chemistry === 'glue') return found;
  if (rh > rhUpTo) found.push({ is: 'too damp', rh, limit: rhUpTo });
  const leastC = leastSurfaceC(reading);
  const surface = surfaceC ?? tempC;
  if (surface < leastC)
    found.push({
      is: 'near the dew point',
      surfaceC: surface,
      dewC: dewPointC(reading),
      leastC,
      isMeasured: surfaceC !== undefined,
    });
  if (rh >= blushFrom && blushes.test(product.productClass))
    found.push({ is: 'blush', rh, from: blushFrom });
  return found;
}

/** For some hours, or until its surface was measured after it came in: then that figure speaks. */
function carriedIn(
  { carriedInAt }: Piece,
  reading: Reading | undefined,
  now: Instant,
): readonly AirWarning[] {
  if (carriedInAt === undefined || now < carriedInAt || now - carriedInAt >= warmsWithin) return [];
  if (reading?.surfaceC !== undefined && reading.at >= carriedInAt) return [];
  const leastC = reading === undefined ? null : leastSurfaceC(reading);
  return [{ is: 'carried in', since: carriedInAt, leastC }];
}
