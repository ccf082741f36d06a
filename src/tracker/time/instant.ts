/** A moment: milliseconds since 1970-01-01T00:00Z. Days and clock times are made from it only where they are shown. */
export type Instant = number;

/** A length of time in milliseconds. */
export type Milliseconds = number;

export const second: Milliseconds = 1000;
export const minute: Milliseconds = 60 * second;
export const hour: Milliseconds = 60 * minute;
export const day: Milliseconds = 24 * hour;

/** Minutes between two instants; a clock that was set back gives 0, never less. */
export const minutesBetween = (from: Instant, to: Instant): number =>
  Math.max(0, to - from) / minute;
