import { padEnd, padStart, width } from '../../views/drawing/index.ts';

/** Rows of words under each other; columns of figures stand at their right edge. */
export function inColumns(
  rows: readonly (readonly string[])[],
  figures: ReadonlySet<number> = new Set(),
): readonly string[] {
  const cells: number[] = [];
  for (const row of rows)
    for (const [index, text] of row.entries())
      cells[index] = Math.max(cells[index] ?? 0, width(text));
  return rows.map((row) =>
    row
      .map((text, index) => (figures.has(index) ? padStart : padEnd)(text, cells[index] ?? 0))
      .join('  ')
      .trimEnd(),
  );
}
