/** What the setting says: a temperature in degrees Celsius, none, or to be learned from the shop's own readings. */
export type NightLow = number | 'none' | 'auto';

/** A shop that is colder or warmer than this at night was a slip of the finger (common practice, no source). */
const coldestC = -30;
const warmestC = 35;

/** Reads `12C`, `54 F`, `none`, `auto`; null where it is none of them. The letter has to be there: 40 could be either. */
export function readNightLow(text: string): NightLow | null {
  const typed = text.trim().toLowerCase();
  if (typed === 'auto' || typed === 'none') return typed;
  const [, digits, unit] = /^([+-]?\d+(?:[.,]\d+)?)\s*°?\s*([cf])$/.exec(typed) ?? [];
  if (digits === undefined) return null;
  const value = Number(digits.replace(',', '.'));
  const tempC = unit === 'f' ? ((value - 32) * 5) / 9 : value;
  return tempC >= coldestC && tempC <= warmestC ? tempC : null;
}
