import { loudPings } from '../bench/head.ts';
import { lineOf, type Line } from '../drawing/index.ts';
import type { View } from '../screen.ts';

/** The first two rows of a screen: its title, and what calls loudly meanwhile. */
export function heading(title: Line, view: View): readonly Line[] {
  const loud = loudPings(view)[0];
  return [title, loud === undefined ? lineOf('') : lineOf(`!! ${loud.text}`, 'loud')];
}
