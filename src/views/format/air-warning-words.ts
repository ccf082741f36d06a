import type { AirWarning } from '../../tracker/bench/index.ts';
import { hour, type Instant } from '../../tracker/time/index.ts';
import type { Shop } from '../port.ts';
import { humidity, temperature } from './air.ts';
import { whenInWords } from './clock.ts';

/** `too cold: 8 C, not below 10 C`. One sentence, with its figure. */
export function airWarningWords(warning: AirWarning, now: Instant, shop: Shop): string {
  const degrees = (celsius: number): string => temperature(celsius, shop.temperature);
  switch (warning.is) {
    case 'no reading':
      return 'no reading of the air yet: note temperature and humidity first';
    case 'old reading':
      return `the reading is ${Math.floor(warning.age / hour)} h old: read the air again`;
    case 'too cold':
      return `too cold: ${degrees(warning.tempC)}, not below ${degrees(warning.limitC)}. Warm the shop`;
    case 'too hot':
      return `too hot: ${degrees(warning.tempC)}, not above ${degrees(warning.limitC)}`;
    case 'surface too cold':
      return `surface too cold: ${degrees(warning.tempC)}, not below ${degrees(warning.limitC)}. Let it warm`;
    case 'too damp':
      return `too damp: ${humidity(warning.rh)}, not above ${humidity(warning.limit)}`;
    case 'near the dew point': {
      const surface = warning.isMeasured ? 'surface' : 'air (no surface measured)';
      return `${surface} ${degrees(warning.surfaceC)}, dew point ${degrees(warning.dewC)}: the surface must have ${degrees(warning.leastC)} or more`;
    }
    case 'blush':
      return `it may turn white: ${humidity(warning.rh)}, from ${humidity(warning.from)} on lacquer and shellac blush`;
    case 'carried in': {
      const least =
        warning.leastC === null ? '' : `: its surface must have ${degrees(warning.leastC)} or more`;
      return `carried in from the cold ${whenInWords(warning.since, now, shop)}${least}. Let it warm, or measure it`;
    }
  }
}
