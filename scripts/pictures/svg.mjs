import { drawnSign } from './signs.mjs';

/**
 * A terminal's screen as an SVG. It names fonts and embeds none: every run of text is told how wide it is, and blocks
 * and lines are drawn as shapes, so that columns stay straight in whatever font a reader has.
 */

export const cell = { width: 8.4, height: 18 };
const baseline = 13.5;
const margin = 10;
const ground = '#101010';
const ink = '#d8d8d8';
const fonts = "ui-monospace,SFMono-Regular,Menlo,Consolas,'DejaVu Sans Mono',monospace";

/** Colours of a terminal by number, from 0 to 15. Each can be read on the ground above. */
const sixteen = [
  ...['#2e3436', '#cc0000', '#4e9a06', '#c4a000', '#729fcf', '#ad7fa8', '#06989a', '#d3d7cf'],
  ...['#888a85', '#ef2929', '#8ae234', '#fce94f', '#729fcf', '#ad7fa8', '#34e2e2', '#eeeeec'],
];

/**
 * How one cell looks. `ground` is null where the screen's own shows.
 *
 * @typedef {{ink: string, ground: string | null, bold: boolean, dim: boolean, underlined: boolean}} Look
 */

/** @typedef {{text: string, column: number, cells: number, look: Look}} Run */

/**
 * @param {import('@xterm/headless').Terminal} emulator
 * @param {string} title what it shows, for who can't see it
 * @returns {string}
 */
export function screenAsSvg(emulator, title) {
  const width = round(emulator.cols * cell.width + 2 * margin);
  const height = emulator.rows * cell.height + 2 * margin;
  const rows = Array.from({ length: emulator.rows }, (_, row) => drawRow(emulator, row));
  return [
    `<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 ${width} ${height}" width="${width}" height="${height}" role="img">`,
    `<title>${escaped(title)}</title>`,
    `<style>text{font:14px ${fonts};fill:${ink}}.b{font-weight:700}.d{opacity:.62}.u{text-decoration:underline}</style>`,
    `<rect width="${width}" height="${height}" rx="6" fill="${ground}"/>`,
    ...rows.filter((row) => row !== ''),
    '</svg>',
    '',
  ].join('\n');
}

/**
 * @param {import('@xterm/headless').Terminal} emulator
 * @param {number} row
 */
function drawRow(emulator, row) {
  const top = margin + row * cell.height;
  const drawn = runsOf(emulator, row).flatMap((run) => [
    ...groundOf(run, top),
    ...wordsOf(run).flatMap((word) => drawWord(word, top)),
  ]);
  return drawn.join('');
}

/**
 * Neighbours that look alike, together.
 *
 * @param {import('@xterm/headless').Terminal} emulator
 * @param {number} row
 * @returns {readonly Run[]}
 */
function runsOf(emulator, row) {
  const buffer = emulator.buffer.active;
  const line = buffer.getLine(buffer.baseY + row);
  /** @type {Run[]} */
  const runs = [];
  for (let column = 0; line !== undefined && column < emulator.cols; column += 1) {
    const read = line.getCell(column);
    if (read === undefined || read.getWidth() === 0) continue;
    const look = lookOf(read);
    const text = read.getChars() || ' ';
    const last = runs.at(-1);
    if (last !== undefined && JSON.stringify(last.look) === JSON.stringify(look)) {
      last.text += text;
      last.cells += read.getWidth();
    } else runs.push({ text, column, cells: read.getWidth(), look });
  }
  return runs;
}

/**
 * @param {import('@xterm/headless').IBufferCell} read
 * @returns {Look}
 */
function lookOf(read) {
  const front = read.isFgDefault() ? ink : colour(read.isFgRGB(), read.getFgColor());
  const back = read.isBgDefault() ? null : colour(read.isBgRGB(), read.getBgColor());
  const inverse = read.isInverse() !== 0;
  return {
    ink: inverse ? (back ?? ground) : front,
    ground: inverse ? front : back,
    bold: read.isBold() !== 0,
    dim: read.isDim() !== 0,
    underlined: read.isUnderline() !== 0,
  };
}

/** @param {boolean} isRgb @param {number} value */
function colour(isRgb, value) {
  const known = isRgb ? `#${value.toString(16).padStart(6, '0')}` : sixteen[value];
  if (known === undefined)
    throw new Error(`the program took colour ${value} of 256, which it never does`);
  return known;
}

/** @param {Run} run @param {number} top */
function groundOf({ column, cells, look }, top) {
  if (look.ground === null) return [];
  return [rect(left(column), top, cells * cell.width, cell.height, look.ground)];
}

/**
 * Words of a run, and each stretch of one drawn sign. Between words nothing is drawn, unless it is underlined.
 *
 * @param {Run} run
 * @returns {readonly Run[]}
 */
function wordsOf({ text, column, look }) {
  /** @type {Run[]} */
  const words = [];
  let at = column;
  for (const part of look.underlined ? [text] : text.split(/( {2,}|[▀▄█▒│┊─├┤┼]+)/)) {
    const word = look.underlined ? part : part.trim();
    const before = part.length - part.trimStart().length;
    if (word !== '')
      words.push({
        text: word,
        column: at + (look.underlined ? 0 : before),
        cells: [...word].length,
        look,
      });
    at += [...part].length;
  }
  return words;
}

/** @param {Run} word @param {number} top */
function drawWord({ text, column, cells, look }, top) {
  const [first = ''] = text;
  if (drawnSign(first, 0, 0, cell) !== null) {
    const shapes = [...text].flatMap(
      (sign, index) => drawnSign(sign, left(column + index), top, cell) ?? [],
    );
    const dim = look.dim ? ' opacity=".62"' : '';
    return [`<path d="${shapes.join('')}" fill="${look.ink}"${dim}/>`];
  }
  const names = [look.bold ? 'b' : '', look.dim ? 'd' : '', look.underlined ? 'u' : ''].filter(
    Boolean,
  );
  const named = names.length === 0 ? '' : ` class="${names.join(' ')}"`;
  const own = look.ink === ink ? '' : ` style="fill:${look.ink}"`;
  const place = `x="${left(column)}" y="${round(top + baseline)}" textLength="${round(cells * cell.width)}"`;
  return [`<text ${place}${named}${own}>${escaped(text)}</text>`];
}

/** @param {number} column */
const left = (column) => round(margin + column * cell.width);

/** @param {number} x @param {number} y @param {number} width @param {number} height @param {string} fill */
const rect = (x, y, width, height, fill) =>
  `<rect x="${x}" y="${y}" width="${round(width)}" height="${height}" fill="${fill}"/>`;

/** @param {number} length */
const round = (length) => Math.round(length * 100) / 100;

/** @param {string} text */
const escaped = (text) =>
  text.replaceAll('&', '&amp;').replaceAll('<', '&lt;').replaceAll('>', '&gt;');
