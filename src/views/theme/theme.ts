import type { GlyphSet } from '../drawing/glyphs.ts';
import type { palettes } from './palette.ts';

/** `none` still sends bold and inverse; `bare` sends no sequence at all. */
export type ColourWay = keyof typeof palettes | 'bare';

export type Theme = { readonly colour: ColourWay; readonly glyphs: GlyphSet };

/** What the environment says about the terminal; absent where a variable is not set. */
export type TerminalHints = {
  readonly NO_COLOR?: string | undefined;
  readonly TERM?: string | undefined;
  readonly COLORTERM?: string | undefined;
  readonly COLORFGBG?: string | undefined;
  readonly LC_ALL?: string | undefined;
  readonly LC_CTYPE?: string | undefined;
  readonly LANG?: string | undefined;
};

/** The settings that decide it; `dark` and `light` are the ground of the terminal. */
export type ThemeChoice = {
  readonly colour: 'auto' | 'dark' | 'light' | '16' | 'none';
  readonly glyphs: 'auto' | GlyphSet;
};

/** The theme for the user's choices and their terminal. */
export const chooseTheme = ({ colour, glyphs }: ThemeChoice, hints: TerminalHints): Theme => ({
  colour: chooseColour(colour, hints),
  glyphs: glyphs === 'auto' ? chooseGlyphs(hints) : glyphs,
});

function chooseColour(choice: ThemeChoice['colour'], hints: TerminalHints): ColourWay {
  if (hints.TERM === 'dumb') return 'bare';
  if (choice === 'none') return 'none';
  // no-color.org: any value but the empty one counts, and a choice in the user's own settings wins over it.
  if (choice === 'auto' && (hints.NO_COLOR ?? '') !== '') return 'none';
  const ground = choice === 'dark' || choice === 'light' ? choice : groundOf(hints.COLORFGBG);
  const hasManyColours = choice !== '16' && /^(truecolor|24bit)$/i.test(hints.COLORTERM ?? '');
  return hasManyColours ? ground : `16 on ${ground}`;
}

/** COLORFGBG is `ink;ground`, sometimes with a word between them; 7 and 15 are the light greys and white. */
function groundOf(colours: string | undefined): 'dark' | 'light' {
  const ground = colours?.split(';').at(-1);
  return ground === '7' || ground === '15' ? 'light' : 'dark';
}

/** Languages in whose locales terminals may draw boxes and blocks two cells wide (East Asian Ambiguous, UAX 11). */
const ambiguousWidth = /^(zh|ja|ko)(_|\.|@|$)/i;

/** Blocks where the locale is UTF-8 or nothing says what it is. The Linux console lacks several of the signs. */
function chooseGlyphs(hints: TerminalHints): GlyphSet {
  if (hints.TERM === 'dumb' || hints.TERM === 'linux') return 'ascii';
  // POSIX: the first of these that is set and not empty names the locale of characters.
  const locale = [hints.LC_ALL, hints.LC_CTYPE, hints.LANG].find((value) => (value ?? '') !== '');
  if (locale === undefined) return 'blocks';
  return /utf-?8/i.test(locale) && !ambiguousWidth.test(locale) ? 'blocks' : 'ascii';
}
