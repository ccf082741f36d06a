/** In a sentence: `26 to 48`. Ends that read alike are told once. */
export const rangeInWords = (low: number, high: number): string => range(low, high, ' to ');

/** In a table: `26-48`. */
export const rangeInTable = (low: number, high: number): string => range(low, high, '-');

const range = (low: number, high: number, between: string): string => {
  const [from, to] = [Math.round(low), Math.round(high)];
  return from === to ? String(from) : `${from}${between}${to}`;
};

/**
 * A range of working minutes as long as it is: `20 to 45 min`, `1 to 2.5 h`, `8 to 13 h`. Hours are whole from five on
 * and halves below; both ends are rounded away from each other, so that the range is never told narrower than it is.
 */
export function hoursRange(lowMinutes: number, highMinutes: number): string {
  if (highMinutes < 100) return `${rangeInWords(lowMinutes, highMinutes)} min`;
  const low = roundHours(lowMinutes / 60, Math.floor);
  const high = roundHours(highMinutes / 60, Math.ceil);
  if (low === 0) return `${Math.round(lowMinutes)} min to ${high} h`;
  return low === high ? `${low} h` : `${low} to ${high} h`;
}

const roundHours = (hours: number, round: (value: number) => number): number =>
  hours < 5 ? round(hours * 2) / 2 : round(hours);

/** How far something is off: `1.4 times`. */
export const times = (ratio: number): string => `${ratio.toFixed(1)} times`;
