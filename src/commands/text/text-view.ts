import { plain, type Line } from '../../views/drawing/index.ts';
import { wrapWords } from '../../views/drawing/wrap.ts';
import type { View } from '../../views/screen.ts';
import type { Look } from '../line/look.ts';

/** What pipes and files take without being cut: as wide as a screen of 80, and as long as it comes. */
const usual = 80;
/** Narrower than any screen is drawn for. */
const least = 32;

/** A terminal that is narrower would break lines anywhere; a wider one gets the same text as a file. */
const columnsFor = ({ terminalColumns }: Look): number =>
  Math.max(least, Math.min(usual, terminalColumns ?? usual));

/** Lets the drawing of screens make plain text too. */
export const textView = (look: Look): View => ({
  snapshot: look,
  now: look.now,
  columns: columnsFor(look),
  rows: Number.MAX_SAFE_INTEGER,
  theme: { colour: 'bare', glyphs: 'blocks' },
  message: null,
});

/** Drawn lines without their looks, and without the spaces that fill a screen. */
export const plainLines = (lines: readonly Line[]): readonly string[] =>
  lines.map((line) => plain(line).trimEnd());

/** A sentence on one line, as pipes and files take it; broken where words end in a terminal that is narrower than they are. */
export const sentenceIn = (sentence: string, columns: number): readonly string[] =>
  columns < usual ? wrapWords(sentence, columns) : [sentence];
