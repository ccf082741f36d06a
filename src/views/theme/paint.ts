import type { Line, Role } from '../drawing/line.ts';
import { visible } from '../drawing/visible.ts';
import { palettes, type Look } from './palette.ts';
import type { ColourWay, Theme } from './theme.ts';

/** The sequences around a segment (SGR of ECMA-48). Each is sent alone, and ended by its own counterpart. */
type Brush = { readonly before: string; readonly after: string };

/** A line as one string for the terminal. Characters that would act on the terminal are written out. */
export function paint(line: Line, theme: Theme): string {
  let painted = '';
  let brush = bare;
  for (const { text, role } of line) {
    const next = brushFor(role, theme.colour);
    // Neighbours of one role are painted in one stroke.
    if (next !== brush) painted += brush.after + next.before;
    painted += visible(text);
    brush = next;
  }
  return painted + brush.after;
}

const bare: Brush = { before: '', after: '' };

const brushes = new Map<string, Brush>();

function brushFor(role: Role, colour: ColourWay): Brush {
  if (colour === 'bare') return bare;
  const key = `${colour} ${role}`;
  let brush = brushes.get(key);
  if (brush === undefined) brushes.set(key, (brush = brushOf(palettes[colour][role])));
  return brush;
}

function brushOf({ ink, ground, bold, dim, underlined, inverse }: Look): Brush {
  const codes: (readonly [string, string])[] = [];
  if (bold) codes.push(['1', '22']);
  if (dim) codes.push(['2', '22']);
  if (underlined) codes.push(['4', '24']);
  if (inverse) codes.push(['7', '27']);
  if (ink !== undefined) codes.push([colourCode(ink, 30), '39']);
  if (ground !== undefined) codes.push([colourCode(ground, 40), '49']);
  return {
    before: codes.map(([start]) => sgr(start)).join(''),
    after: codes
      .map(([, end]) => sgr(end))
      .reverse()
      .join(''),
  };
}

/** `base` is 30 for ink, 40 for ground; the bright eight lie 60 above. */
function colourCode(colour: string | number, base: number): string {
  if (typeof colour === 'number')
    return String(colour < 8 ? base + colour : base + 60 + colour - 8);
  const channels = [1, 3, 5].map((start) => Number.parseInt(colour.slice(start, start + 2), 16));
  return [base + 8, 2, ...channels].join(';');
}

const sgr = (code: string): string => `\u001b[${code}m`;
