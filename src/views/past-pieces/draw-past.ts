import { pieceMinutes } from '../../tracker/bench/index.ts';
import { fitEnd, fitStart, lineOf, segment, type Line } from '../drawing/index.ts';
import { wrapWords } from '../drawing/wrap.ts';
import { fullDay, minutesSpent, shopDay, shortDay } from '../format/index.ts';
import { shownAround } from '../hours/hours-layout.ts';
import { page } from '../page.ts';
import { drawField } from '../parts/draw-field.ts';
import { heading } from '../parts/heading.ts';
import { keyHints } from '../parts/key-hints.ts';
import { messageLines } from '../parts/message-lines.ts';
import { fieldIn } from '../parts/writing.ts';
import type { Frame, View } from '../screen.ts';
import type { PastState } from '../screens.ts';
import type { FoundPiece } from './find-piece.ts';

const markCells = 2;
const dayCells = 12;
const minutesCells = 8;

/** Past pieces, the last that left first: when it left and came, its minutes and its schedule. */
export function drawPast(
  state: PastState,
  found: readonly FoundPiece[],
  all: readonly FoundPiece[],
  view: View,
): Frame {
  const { columns, theme } = view;
  const isNarrow = columns < 80;
  const isFinding = state.finding === true;
  const top = heading(lineOf(titleWords(state, found.length, all.length), 'strong'), view);
  const field =
    isFinding || state.find !== ''
      ? drawField('find', fieldIn(state.find, state), columns, theme)
      : null;
  const searched = field === null ? [] : [isFinding ? field.line : lineOf(`find  ${state.find}`)];
  const head = [...top, ...searched, headerLine(columns)];
  const problems = (state.past?.problems ?? []).flatMap((problem) => wrapWords(problem, columns));
  const keys = isFinding
    ? ['Enter job card', 'Tab to the list', 'Esc all pieces']
    : ['f find', 'Enter job card', 'p back on the bench', 'm hours', 'Esc back'];
  const foot = [
    ...problems.slice(0, 3).map((text) => lineOf(text, 'refusal')),
    ...messageLines(view),
    ...keyHints(isNarrow ? keys.filter((key) => !key.startsWith('m')) : keys, columns),
  ];
  const at = Math.max(0, Math.min(state.at, found.length - 1));
  const room = Math.max(1, view.rows - head.length - foot.length);
  const from = shownAround(at, found.length, room);
  const rows = found
    .slice(from, from + room)
    .map((each, index) => pieceLine(each, from + index === at, view));
  const nothing = found.length > 0 ? [] : emptyLines(state, all.length, columns);
  return {
    lines: page([...head, ...rows, ...nothing], foot, view),
    ...(isFinding && field !== null ? { cursor: { x: field.x, y: top.length } } : {}),
  };
}

function titleWords({ find, past }: PastState, found: number, all: number): string {
  if (past === null) return 'past pieces, reading past years';
  const count = `${all} past ${all === 1 ? 'piece' : 'pieces'}`;
  return find.trim() === '' ? count : `${count}, ${found} found`;
}

function emptyLines({ find, past }: PastState, all: number, columns: number): readonly Line[] {
  const says =
    all > 0
      ? `No past piece is called "${find.trim()}". Esc shows all.`
      : past === null
        ? ''
        : 'No piece has left the bench yet. y on the bench takes one off.';
  return wrapWords(says, columns).map((text) => lineOf(text));
}

const nameCells = (columns: number): number =>
  columns < 80 ? columns - markCells - dayCells - minutesCells : columns < 100 ? 25 : 40;

function headerLine(columns: number): Line {
  const name = fitEnd('piece', markCells + nameCells(columns));
  const figures = `${fitStart('left', dayCells)}${fitStart('minutes', minutesCells)}`;
  const more = columns < 80 ? '' : `${fitStart('came in', dayCells)}  finishing schedule`;
  return lineOf(name + figures + more, 'quiet');
}

function pieceLine({ piece, bench }: FoundPiece, isMarked: boolean, view: View): Line {
  const { columns, snapshot, now, theme } = view;
  const { zone } = snapshot.shop;
  const dayOf = (at: number | null): string => {
    if (at === null) return '';
    const on = shopDay(at, zone);
    const isThisYear = on.slice(0, 4) === shopDay(now, zone).slice(0, 4);
    // Without its weekday a full date is short enough for the column.
    return isThisYear ? shortDay(on) : fullDay(on).split(' ').slice(1).join(' ');
  };
  const minutes = pieceMinutes(bench, piece, now);
  const left = columns - markCells - nameCells(columns) - 2 * dayCells - minutesCells - 2;
  return [
    segment(
      (isMarked ? '> ' : '  ') + fitEnd(piece.name, nameCells(columns), theme.glyphs),
      isMarked ? 'strong' : 'text',
    ),
    segment(fitStart(dayOf(piece.leftAt), dayCells)),
    segment(fitStart(minutesSpent(minutes * 60_000), minutesCells)),
    segment(
      columns < 80
        ? ''
        : `${fitStart(dayOf(piece.addedAt), dayCells)}  ${fitEnd(piece.schedule.name, left, theme.glyphs)}`,
      'quiet',
    ),
  ];
}
