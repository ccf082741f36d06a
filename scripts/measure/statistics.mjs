/**
 * @param {readonly number[]} values at least one
 * @param {number} part 0..1
 * @returns {number} the value below which that part of them lies, between the two nearest
 */
export function quantile(values, part) {
  const sorted = values.toSorted((a, b) => a - b);
  const place = (sorted.length - 1) * part;
  const below = sorted[Math.floor(place)];
  const above = sorted[Math.ceil(place)];
  if (below === undefined || above === undefined) throw new Error('nothing was measured');
  return below + (above - below) * (place - Math.floor(place));
}

/** @param {readonly number[]} values at least one */
export const median = (values) => quantile(values, 0.5);

/** @param {number} ms */
export const inMs = (ms) => `${ms < 10 ? ms.toFixed(2) : ms.toFixed(0)} ms`;

/** @param {number} bytes */
export const inKb = (bytes) => `${Math.round(bytes / 1000)} kB`;
