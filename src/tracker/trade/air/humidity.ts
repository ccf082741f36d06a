import type { Climate } from '../climate.ts';
import { saturationPa, triplePointC } from './saturation.ts';

/** Air pressure at sea level in pascal. A shop at 1500 m differs by less than the meter beside the work. */
const seaLevelPa = 101_325;

/** Pressure of the water vapour in the air, in pascal. */
export const vapourPa = ({ tempC, rh }: Climate): number => (rh / 100) * saturationPa(tempC);

/** Coldest and narrowest step of the searches, in degrees Celsius. */
const coldestC = -100;
const nearEnough = 1e-6;

/**
 * The temperature at which the air's vapour begins to settle on a surface, in degrees Celsius. Below the triple point it
 * is the frost point: over ice, a little warmer than the dew point over supercooled water.
 */
export function dewPointC(climate: Climate): number {
  const vapour = vapourPa(climate);
  return search((tempC) => saturationPa(tempC) - vapour, coldestC, climate.tempC);
}

/**
 * The temperature to which a wet film cools itself in that air, in degrees Celsius (ASHRAE Fundamentals 2017, chapter 1,
 * equations 33 and 35: what the air gives in heat goes into the water that leaves).
 */
export function wetBulbC(climate: Climate, pressurePa = seaLevelPa): number {
  const actual = humidityRatio(vapourPa(climate), pressurePa);
  const surplus = (bulbC: number): number =>
    humidityRatioAtBulb(bulbC, climate.tempC, pressurePa) - actual;
  return search(surplus, dewPointC(climate), climate.tempC);
}

/** Kilograms of vapour to a kilogram of dry air. */
const humidityRatio = (vapour: number, pressurePa: number): number =>
  (0.621945 * vapour) / (pressurePa - vapour);

function humidityRatioAtBulb(bulbC: number, tempC: number, pressurePa: number): number {
  const saturated = humidityRatio(saturationPa(bulbC), pressurePa);
  return bulbC > triplePointC
    ? ((2501 - 2.326 * bulbC) * saturated - 1.006 * (tempC - bulbC)) /
        (2501 + 1.86 * tempC - 4.186 * bulbC)
    : ((2830 - 0.24 * bulbC) * saturated - 1.006 * (tempC - bulbC)) /
        (2830 + 1.86 * tempC - 2.1 * bulbC);
}

/** Where something that grows passes zero. */
function search(grows: (tempC: number) => number, from: number, to: number): number {
  let low = from;
  let high = to;
  while (high - low > nearEnough) {
    const middle = (low + high) / 2;
    if (grows(middle) < 0) low = middle;
    else high = middle;
  }
  return (low + high) / 2;
}

/** How far above the dew point a surface must be to be coated, in kelvin (ISO 8502-4, as coating guides restate it). */
const aboveDewPoint = 3;

/** The coldest that a surface may be to take a coat in that air, in degrees Celsius. */
export const leastSurfaceC = (air: Climate): number => dewPointC(air) + aboveDewPoint;
