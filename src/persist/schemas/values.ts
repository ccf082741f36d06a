import * as z from 'zod/mini';

/** The furthest moment that a date can show; beyond it every display of it would fail. */
const furthestInstant = 8.64e15;

export const instant = z.number().check(z.minimum(-furthestInstant), z.maximum(furthestInstant));
export const milliseconds = z.number();
export const calendarDay = z.iso.date();
/** Names of things in the file: never empty, since an empty one could not be asked for. */
export const id = z.string().check(z.minLength(1));
export const climate = z.strictObject({ tempC: z.number(), rh: z.number() });
/** Conditions as last read, kept with what was put on. */
export const air = z.nullable(
  z.strictObject({ tempC: z.number(), rh: z.number(), readAt: instant }),
);
