import type { Climate } from './climate.ts';

/**
 * The moisture content at which wood neither gains nor loses in such air, in percent of its dry mass.
 *
 * Wood Handbook (FPL-GTR-282, 2021) eq. 4-5, a Hailwood-Horrobin form with two hydrates, coefficients for degrees
 * Celsius. It was fitted for -1.1 to 132.2 C and 5 to 95 %; beyond that it only goes on smoothly. The handbook itself
 * says that species differ, most in damp air, and that values lie midway between wetting and drying.
 */
export function equilibriumMoisture({ tempC, rh }: Climate): number {
  // In degrees Fahrenheit all four polynomials are others; mixing them up is off by only 0.2 points, and easily missed.
  const w = 349 + 1.29 * tempC + 0.0135 * tempC ** 2;
  const k = 0.805 + 0.000736 * tempC - 0.00000273 * tempC ** 2;
  const k1 = 6.27 - 0.00938 * tempC - 0.000303 * tempC ** 2;
  const k2 = 1.91 + 0.0407 * tempC - 0.000293 * tempC ** 2;
  const kh = (k * rh) / 100;
  const hydrates = k1 * kh + 2 * k1 * k2 * kh ** 2;
  return (1800 / w) * (kh / (1 - kh) + hydrates / (1 + k1 * kh + k1 * k2 * kh ** 2));
}

/**
 * The relative humidity, in percent, at which wood of that moisture content is at rest.
 * Above what damp air gives it there is none: 100 then, and 0 below none at all.
 */
export function humidityAtRest(moisture: number, tempC: number): number {
  let low = 0;
  let high = 100;
  // It rises all the way, so halving finds it: 40 times is finer than a number can tell.
  for (let halving = 0; halving < 40; halving += 1) {
    const middle = (low + high) / 2;
    if (equilibriumMoisture({ tempC, rh: middle }) < moisture) low = middle;
    else high = middle;
  }
  return (low + high) / 2;
}
