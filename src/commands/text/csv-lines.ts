import { visible } from '../../views/drawing/visible.ts';

/** What may stand in a cell; nothing for what isn't known. */
export type Cell = string | number | null;

/**
 * Rows as CSV (RFC 4180), one a line. A line break in a cell is written out, and a text that a spreadsheet would take for
 * a formula gets an apostrophe before it, as OWASP advises against CSV injection; figures stay figures.
 */
export async function csvLines(rows: readonly (readonly Cell[])[]): Promise<readonly string[]> {
  const { stringify } = await import('csv-stringify/sync');
  const text = stringify(
    rows.map((row) => row.map((cell) => (typeof cell === 'string' ? visible(cell) : cell))),
    { escape_formulas: true },
  );
  return text.split('\n').slice(0, -1);
}
