/**
 * Blocks and lines as shapes that fill their cell: as letters they would leave seams that differ from font to font.
 *
 * @typedef {{width: number, height: number}} Cell
 */

const stroke = 1.4;

/** @type {Readonly<Record<string, (cell: Cell) => readonly (readonly [x: number, y: number, width: number, height: number])[]>>} */
const shapes = {
  '█': ({ width, height }) => [[0, 0, width, height]],
  '▀': ({ width, height }) => [[0, 0, width, height / 2]],
  '▄': ({ width, height }) => [[0, height / 2, width, height / 2]],
  '▒': ({ width, height }) => bands(width, height, 6),
  '│': ({ width, height }) => [upright(width, 0, height)],
  '┊': ({ width, height }) =>
    [0, 1, 2].map((dash) => upright(width, (dash + 0.25) * (height / 3), height / 6)),
  '─': ({ width, height }) => [level(height, 0, width)],
  '├': ({ width, height }) => [
    upright(width, height / 4, height / 2),
    level(height, width / 2, width / 2),
  ],
  '┤': ({ width, height }) => [upright(width, height / 4, height / 2), level(height, 0, width / 2)],
  '┼': ({ width, height }) => [upright(width, height / 4, height / 2), level(height, 0, width)],
};

/** @param {number} width @param {number} y @param {number} height @returns {readonly [number, number, number, number]} */
const upright = (width, y, height) => [(width - stroke) / 2, y, stroke, height];

/** @param {number} height @param {number} x @param {number} width @returns {readonly [number, number, number, number]} */
const level = (height, x, width) => [x, (height - stroke) / 2, width, stroke];

/** Half the cell, in level bands. @param {number} width @param {number} height @param {number} count */
const bands = (width, height, count) =>
  Array.from(
    { length: count },
    (_, band) => /** @type {const} */ ([0, (band * height) / count, width, height / count / 2]),
  );

/**
 * The path of a sign with its cell's corner at `x`, `y`; null for what is written as a letter.
 *
 * @param {string} sign
 * @param {number} x
 * @param {number} y
 * @param {Cell} cell
 * @returns {string | null}
 */
export function drawnSign(sign, x, y, cell) {
  const boxes = shapes[sign]?.(cell);
  if (boxes === undefined) return null;
  return boxes
    .map(
      ([dx, dy, width, height]) =>
        `M${short(x + dx)} ${short(y + dy)}h${short(width)}v${short(height)}h-${short(width)}z`,
    )
    .join('');
}

/** @param {number} length */
const short = (length) => Math.round(length * 100) / 100;
