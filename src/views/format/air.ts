import type { TemperatureUnit } from '../../tracker/settings/index.ts';
import { dewPointC, type Climate, type Metered } from '../../tracker/trade/index.ts';

/** `15 C`, `59 F`; given in degrees Celsius. */
export const temperature = (celsius: number, unit: TemperatureUnit): string =>
  `${Math.round(unit === 'C' ? celsius : (celsius * 9) / 5 + 32)} ${unit}`;

/** `65 %` */
export const humidity = (percent: number): string => `${Math.round(percent)} %`;

/** `15 C 65 %` */
export const air = (climate: Climate, unit: TemperatureUnit): string =>
  `${temperature(climate.tempC, unit)} ${humidity(climate.rh)}`;

/** `15 C 65 %, surface 14 C` */
export const metered = (read: Metered, unit: TemperatureUnit): string =>
  read.surfaceC === undefined
    ? air(read, unit)
    : `${air(read, unit)}, surface ${temperature(read.surfaceC, unit)}`;

/** `8 C`, the temperature at which that air wets a surface. */
export const dewPoint = (climate: Climate, unit: TemperatureUnit): string =>
  temperature(dewPointC(climate), unit);
