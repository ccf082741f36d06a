import { labelOf } from '../../tracker/bench/index.ts';
import type { Due } from '../../tracker/overnight/index.ts';
import { fitEnd, segment, type Line, type Role } from '../drawing/index.ts';
import { wrapWords } from '../drawing/wrap.ts';
import { clockCells, clockOrDay } from '../format/index.ts';
import { calledPiece } from '../parts/called-piece.ts';
import type { View } from '../screen.ts';
import { dueWords } from './due-words.ts';

const nameCells = 18;
/** A weekday or a date after the clock. */
const dayCells = 8;
/** Below this the words stand under the name. */
const oneLine = 60;

const roles: Readonly<Record<Due['loss'], Role>> = {
  spoils: 'spoils',
  'costs work': 'work lost',
  'costs nothing': 'text',
};

/** Edges as a table: whose, when, what it costs. */
export function dueLines(dues: readonly Due[], view: View): readonly Line[] {
  const { columns, now, snapshot, theme } = view;
  const { shop } = snapshot;
  return dues.flatMap((due): readonly Line[] => {
    const role = roles[due.loss];
    const when = clockOrDay(due.at, now, shop);
    const words = dueWords(due, now, shop);
    const name = due.piece === null ? labelOf(due) : calledPiece(due.piece);
    if (columns < oneLine)
      return [
        [
          segment(fitEnd(` ${name}`, columns - when.length - 2, theme.glyphs)),
          segment(`  ${when}`, role),
        ],
        ...under(words, role, columns, 3),
      ];
    const clockAt = nameCells + 1;
    const wordsAt = clockAt + clockCells(shop) + dayCells;
    const [first = '', ...more] = wrapWords(words, columns - wordsAt);
    return [
      [
        segment(fitEnd(` ${name}`, nameCells, theme.glyphs) + ' '),
        segment(fitEnd(when, wordsAt - clockAt) + first, role),
      ],
      ...more.flatMap((line) => under(line, role, columns, wordsAt)),
    ];
  });
}

const under = (text: string, role: Role, columns: number, indent: number): readonly Line[] =>
  wrapWords(text, columns - indent).map((line) => [
    segment(' '.repeat(indent)),
    segment(line, role),
  ]);
