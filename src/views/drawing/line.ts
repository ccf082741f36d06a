import { cut, spaces, width } from './cells.ts';
import type { GlyphSet } from './glyphs.ts';
import { visible } from './visible.ts';

/** What a stretch of text is, from which a theme makes its look. */
export const roles = [
  'text',
  /** In hand, selected, closing within the hour. */
  'strong',
  /** Dots, second lines, the foot. */
  'quiet',
  /** Try it, B now, clamps off. */
  'go',
  'work lost',
  /** Spoils soon, or is late: a ground under its own words. */
  'spoils',
  'keep off',
  /** The foot line of a refusal, or of what was not recorded. */
  'refusal',
  /** The "Not" of a refusal. */
  'inverse',
  /** A whole row that calls until a key is pressed. */
  'loud',
  /** The number of a row that has just changed its place. */
  'moved',
] as const;
export type Role = (typeof roles)[number];

export type Segment = { readonly text: string; readonly role: Role };

/** One row of a screen, from left to right. */
export type Line = readonly Segment[];

export const segment = (text: string, role: Role = 'text'): Segment => ({ text, role });

/** A line of one role. */
export const lineOf = (text: string, role: Role = 'text'): Line => [{ text, role }];

/** Neighbours of one role made one: fewer changes of look to send. */
export function merged(line: Line): Line {
  const joined: Segment[] = [];
  for (const next of line) {
    const last = joined.at(-1);
    if (last?.role === next.role)
      joined[joined.length - 1] = { text: last.text + next.text, role: next.role };
    else joined.push(next);
  }
  return joined;
}

/** The text alone, as it may be sent anywhere. */
export const plain = (line: Line): string => line.map(({ text }) => visible(text)).join('');

export const lineWidth = (line: Line): number =>
  line.reduce((cells, { text }) => cells + width(text), 0);

/** Exactly so many cells: what is longer is cut where it reaches the edge, what is shorter is filled in the role given. */
export function fitLine(
  line: Line,
  cells: number,
  glyphs: GlyphSet = 'blocks',
  fill: Role = 'text',
): Line {
  const spare = cells - lineWidth(line);
  if (spare >= 0) return spare === 0 ? line : [...line, { text: spaces(spare), role: fill }];
  const fitted: Segment[] = [];
  let left = cells;
  for (const { text, role } of line) {
    const taken = width(text);
    if (taken >= left) {
      // The space makes a segment that ends just at the edge give its last cell to the mark.
      fitted.push({ text: cut(`${text} `, left, glyphs), role });
      break;
    }
    fitted.push({ text, role });
    left -= taken;
  }
  const unfilled = cells - lineWidth(fitted);
  return unfilled > 0 ? [...fitted, { text: spaces(unfilled), role: fill }] : fitted;
}

/** One part at the left edge, one at the right; where they would touch the left one is cut. */
export function spread(
  left: Line,
  right: Line,
  cells: number,
  glyphs: GlyphSet = 'blocks',
  fill: Role = 'text',
): Line {
  const taken = lineWidth(right);
  if (taken === 0) return fitLine(left, cells, glyphs, fill);
  if (taken >= cells) return fitLine(right, cells, glyphs, fill);
  return [...fitLine(left, cells - taken - 1, glyphs, fill), { text: ' ', role: fill }, ...right];
}

/** The same line in one role, as for a row that turns loud. */
export const inRole = (line: Line, role: Role): Line => lineOf(plain(line), role);
