import { plain, type Line } from '../../views/drawing/index.ts';
import type { View } from '../../views/screen.ts';
import type { Look } from '../line/look.ts';

/** What pipes and files take without being cut: as wide as a screen of 80, and as long as it comes. */
const columns = 80;

/** Lets the drawing of screens make plain text too. */
export const textView = (look: Look): View => ({
  snapshot: look,
  now: look.now,
  columns,
  rows: Number.MAX_SAFE_INTEGER,
  theme: { colour: 'bare', glyphs: 'blocks' },
  message: null,
});

/** Drawn lines without their looks, and without the spaces that fill a screen. */
export const plainLines = (lines: readonly Line[]): readonly string[] =>
  lines.map((line) => plain(line).trimEnd());
