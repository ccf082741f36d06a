export type GlyphSet = 'blocks' | 'ascii';

/** Every sign of the drawings; each takes one cell. Ink follows loss: the more that can be lost, the darker the bar. */
export type Glyphs = {
  readonly now: string;
  /** Where the scale of the time bar changes. */
  readonly break: string;
  readonly wait: string;
  /** Good until a closing. */
  readonly goTill: string;
  /** Good any time after. */
  readonly goAfter: string;
  readonly afterWork: string;
  readonly keepOff: string;
  readonly late: string;
  readonly opens: string;
  /** Closes, and costs work. */
  readonly closes: string;
  /** Closes, and spoils or is barred. */
  readonly shuts: string;
  /** More lies past the right edge; past the left edge of a range. */
  readonly beyond: string;
  readonly short: string;
  /** An edge that hangs on something assumed. */
  readonly assumed: string;
  readonly inHand: string;
  readonly cut: string;
  readonly rangeLow: string;
  readonly rangeLine: string;
  readonly rangeHigh: string;
  readonly estimate: string;
  readonly actual: string;
};

export const glyphSets: Readonly<Record<GlyphSet, Glyphs>> = {
  blocks: {
    now: '│',
    break: '┊',
    wait: '·',
    goTill: '█',
    goAfter: '─',
    afterWork: '▒',
    keepOff: '×',
    late: '!',
    opens: '(',
    closes: ')',
    shuts: ']',
    beyond: '›',
    short: '‹',
    assumed: '?',
    inHand: '▶',
    cut: '…',
    rangeLow: '├',
    rangeLine: '─',
    rangeHigh: '┤',
    estimate: '┼',
    actual: '●',
  },
  ascii: {
    now: '|',
    break: ':',
    wait: '.',
    goTill: '#',
    goAfter: '-',
    afterWork: '%',
    keepOff: 'x',
    late: '!',
    opens: '(',
    closes: ')',
    shuts: ']',
    beyond: '>',
    short: '<',
    assumed: '?',
    inHand: '*',
    cut: '~',
    rangeLow: '|',
    rangeLine: '-',
    rangeHigh: '|',
    estimate: '+',
    actual: 'o',
  },
};
