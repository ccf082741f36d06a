/** What `readSize` makes of a text. */
export type SizeReading =
  { readonly ok: true; readonly m2: number } | { readonly ok: false; readonly says: string };

/** Exact: 0.3048 m to the foot. */
const squareFoot = 0.3048 ** 2;

/** Reads a show surface: `0.9`, `0.9 m2`, `10 sq ft`. Without a unit it is square metres, or square feet in an inch shop. */
export function readSize(text: string, lengths: 'mm' | 'in'): SizeReading {
  const typed = text.trim().toLowerCase();
  const found = /^(\d+(?:[.,]\d+)?)\s*(m2|m²|sqm|sq m|sq\.? ?ft|ft2|ft²)?$/.exec(typed);
  if (found === null)
    return { ok: false, says: `"${text.trim()}" is no size. Write 0.9 m2 or 10 sq ft.` };
  const [, figure = '', unit] = found;
  const isInFeet = unit === undefined ? lengths === 'in' : unit.includes('f');
  const size = Number(figure.replace(',', '.'));
  // Hundredths of a square metre are finer than anybody measures furniture.
  return { ok: true, m2: Math.round(size * (isInFeet ? squareFoot : 1) * 100) / 100 };
}
