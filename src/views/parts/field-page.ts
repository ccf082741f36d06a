import { lineOf, type Line } from '../drawing/index.ts';
import { wrapWords } from '../drawing/wrap.ts';
import { page } from '../page.ts';
import type { Frame, View } from '../screen.ts';
import { drawField } from './draw-field.ts';
import { heading } from './heading.ts';
import { keyHints } from './key-hints.ts';
import { messageLines } from './message-lines.ts';
import type { TextField } from './text-field.ts';

export type FieldPage = {
  readonly title: string;
  /** What is asked for; stands before the text. */
  readonly label: string;
  readonly field: TextField;
  /** Lines between title and field, for what has been written already. */
  readonly above?: readonly Line[];
  /** Sentences under the field, each broken into lines. */
  readonly hints: readonly string[];
  readonly keys: readonly string[];
};

/** A screen that asks for one line of text. */
export function fieldPage(asked: FieldPage, view: View): Frame {
  const { columns, theme } = view;
  const drawn = drawField(asked.label, asked.field, columns, theme);
  const above = [...heading(lineOf(asked.title, 'strong'), view), ...(asked.above ?? [])];
  const below = asked.hints.flatMap((hint) =>
    wrapWords(hint, columns).map((line) => lineOf(line, 'quiet')),
  );
  const foot = [...messageLines(view), ...keyHints(asked.keys, columns, 3)];
  // Where rows lack the field stays and what is said about it goes.
  const room = Math.max(1, view.rows - foot.length);
  const kept = above.slice(0, Math.max(0, room - 1));
  return {
    lines: page([...kept, drawn.line, lineOf(''), ...below], foot, view),
    cursor: { x: drawn.x, y: kept.length },
  };
}
