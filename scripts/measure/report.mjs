/**
 * One line of the table. `met` is null where there is nothing to hold against a target.
 *
 * @typedef {{what: string, target: string, measured: string, met: boolean | null, detail: string}} Row
 */

/**
 * @param {string} what
 * @param {number} target at most
 * @param {number} measured
 * @param {string} detail
 * @returns {Row}
 */
export const atMost = (what, target, measured, detail) => ({
  what,
  target: String(target),
  measured: Number.isInteger(measured) ? String(measured) : measured.toFixed(2),
  met: measured <= target,
  detail,
});

/**
 * @param {string} what
 * @param {number | string} target
 * @param {string} because
 * @returns {Row}
 */
export const skipped = (what, target, because) => ({
  what,
  target: String(target),
  measured: 'skipped',
  met: null,
  detail: because,
});

/**
 * Told without a target.
 *
 * @param {string} what
 * @param {string} measured
 * @param {string} detail
 * @returns {Row}
 */
export const told = (what, measured, detail) => ({ what, target: '', measured, met: null, detail });

/** @param {Row} row */
const cellsOf = ({ what, target, measured, met, detail }) => [
  what,
  target,
  measured,
  met === null ? '' : met ? 'yes' : '**no**',
  detail,
];

/** @param {Row} row @returns {string} as a line of the table, for whoever waits for the rest */
export const lineOf = (row) => `| ${cellsOf(row).join(' | ')} |`;

/** @param {readonly Row[]} rows @returns {string} a table in Markdown */
export function tableOf(rows) {
  const cells = rows.map(cellsOf);
  const all = [['what', 'target', 'measured', 'met', 'taken from'], ...cells];
  const widths = [0, 1, 2, 3, 4].map((column) =>
    Math.max(...all.map((line) => line[column]?.length ?? 0)),
  );
  /** @param {readonly string[]} line */
  const drawn = (line) =>
    `| ${line.map((cell, column) => cell.padEnd(widths[column] ?? 0)).join(' | ')} |`;
  const rule = `| ${widths.map((width) => '-'.repeat(width)).join(' | ')} |`;
  const [head = [], ...body] = all;
  return [drawn(head), rule, ...body.map(drawn)].join('\n');
}
