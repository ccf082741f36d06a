/**
 * Pressure of saturated water vapour, after Hyland and Wexler as ASHRAE Fundamentals (2017, chapter 1) gives it:
 * ln p = c8/T + c9 + c10 T + c11 T^2 + c12 T^3 + c13 T^4 + c14 ln T, with T in kelvin and p in pascal.
 */

const kelvin = 273.15;
/** The triple point of water: below it the formula over ice holds. */
export const triplePointC = 0.01;

const overWater = {
  inverse: -5.8002206e3,
  powers: [1.3914993, -4.8640239e-2, 4.1764768e-5, -1.4452093e-8],
  log: 6.5459673,
} as const;

const overIce = {
  inverse: -5.6745359e3,
  powers: [6.3925247, -9.677843e-3, 6.2215701e-7, 2.0747825e-9, -9.484024e-13],
  log: 4.1635019,
} as const;

/** Saturation pressure in pascal, at a temperature in degrees Celsius: over water, below the triple point over ice. */
export function saturationPa(tempC: number): number {
  const { inverse, powers, log } = tempC <= triplePointC ? overIce : overWater;
  const t = tempC + kelvin;
  const sum = powers.reduceRight((higher, power) => higher * t + power, 0);
  return Math.exp(inverse / t + sum + log * Math.log(t));
}
