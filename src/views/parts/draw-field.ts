import { fitEnd, segment, width, type Line } from '../drawing/index.ts';
import { visible } from '../drawing/visible.ts';
import type { Theme } from '../theme/index.ts';
import { charactersOf, cursorOf, type TextField } from './text-field.ts';

export type DrawnField = {
  readonly line: Line;
  /** The cell, from 0, in which the cursor stands. */
  readonly x: number;
};

/**
 * `name   Cane rocker_`: a label and the field behind it, in exactly so many cells. The cursor is `_` behind the text and
 * turns over the character on which it stands; of a text that is too long the part around the cursor is shown.
 */
export function drawField(
  label: string,
  field: TextField,
  cells: number,
  theme: Pick<Theme, 'colour' | 'glyphs'>,
): DrawnField {
  const head = label === '' ? '' : `${label}  `;
  const room = Math.max(1, cells - width(head));
  const at = cursorOf(field);
  const before = charactersOf(field.text.slice(0, at)).map(visible);
  const after = charactersOf(field.text.slice(at)).map(visible);
  // Without any looks a character can't be turned over: the mark stands before it.
  const isMarked = theme.colour === 'bare' || after.length === 0;
  const under = isMarked ? '_' : (after.shift() ?? '_');
  const shown = lastThatFit(before, room - width(under));
  const tail = fitEnd(after.join(''), room - width(shown) - width(under), theme.glyphs);
  return {
    line: [
      segment(head, 'quiet'),
      segment(shown, 'strong'),
      segment(under, isMarked ? 'strong' : 'inverse'),
      segment(tail, 'strong'),
    ],
    x: width(head) + width(shown),
  };
}

/** The end of a text, as much as there is room for. */
function lastThatFit(characters: readonly string[], room: number): string {
  let shown = '';
  for (const character of characters.toReversed()) {
    if (width(character + shown) > room) break;
    shown = character + shown;
  }
  return shown;
}
