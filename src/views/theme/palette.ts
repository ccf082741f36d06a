import type { Role } from '../drawing/line.ts';

/** How a role looks; colours as `#rrggbb`, or as the number that a terminal of 16 colours knows them by (0 to 15). */
export type Look = {
  readonly ink?: string | number;
  readonly ground?: string | number;
  readonly bold?: boolean;
  readonly dim?: boolean;
  readonly underlined?: boolean;
  readonly inverse?: boolean;
};

export type Palette = Readonly<Record<Role, Look>>;

/** From the palette of Okabe and Ito for colour-blind eyes (jfly.uni-koeln.de/color). */
export const okabeIto = {
  skyBlue: '#56B4E9',
  orange: '#E69F00',
  blue: '#0072B2',
  vermillion: '#D55E00',
  purple: '#CC79A7',
  black: '#000000',
} as const;

const black = 0;
const yellow = 3;
const blue = 4;
const magenta = 5;
const brightBlack = 8;
const brightRed = 9;
const brightCyan = 14;

/** Looks that need no colour; each role also has its own word or shape. */
const uncoloured: Palette = {
  text: {},
  strong: { bold: true },
  quiet: {},
  go: {},
  'work lost': { bold: true },
  spoils: { inverse: true },
  'keep off': {},
  refusal: { bold: true },
  inverse: { inverse: true },
  loud: { inverse: true, bold: true },
  moved: { underlined: true },
};

const dark: Palette = {
  ...uncoloured,
  quiet: { dim: true },
  go: { ink: okabeIto.skyBlue },
  'work lost': { ink: okabeIto.orange },
  spoils: { ink: okabeIto.black, ground: okabeIto.vermillion },
  'keep off': { ink: okabeIto.purple },
  loud: { ink: okabeIto.black, ground: okabeIto.vermillion, bold: true },
};

/** On white only the blue can be read as ink: the others become grounds under black. */
const light: Palette = {
  ...dark,
  go: { ink: okabeIto.blue },
  'work lost': { ink: okabeIto.black, ground: okabeIto.orange },
  'keep off': { ink: okabeIto.black, ground: okabeIto.purple },
};

/** No bold on the red ground: many terminals make bold black grey. */
const sixteenOnDark: Palette = {
  ...uncoloured,
  quiet: { ink: brightBlack },
  go: { ink: brightCyan },
  'work lost': { ink: yellow },
  spoils: { ink: black, ground: brightRed },
  'keep off': { ink: magenta },
  loud: { ink: black, ground: brightRed },
};

const sixteenOnLight: Palette = {
  ...sixteenOnDark,
  go: { ink: blue },
  'work lost': { ink: black, ground: yellow },
};

export const palettes = {
  dark,
  light,
  '16 on dark': sixteenOnDark,
  '16 on light': sixteenOnLight,
  none: uncoloured,
} as const;
