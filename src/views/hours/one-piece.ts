import { hoursOfPiece, type PieceHours } from '../../tracker/estimate/index.ts';
import type { Review } from '../../tracker/review/index.ts';
import { lineOf, segment, spread, type Line } from '../drawing/index.ts';
import { wrapWords } from '../drawing/wrap.ts';
import { minutesSpent } from '../format/index.ts';
import { page } from '../page.ts';
import { calledPiece } from '../parts/called-piece.ts';
import { heading } from '../parts/heading.ts';
import { keyHints } from '../parts/key-hints.ts';
import { messageLines } from '../parts/message-lines.ts';
import type { FoundPiece } from '../past-pieces/find-piece.ts';
import type { Frame, View } from '../screen.ts';
import type { HoursState } from '../screens.ts';
import { aboutRow } from './about-row.ts';
import { pieceLayout, shownAround, tableTitle } from './hours-layout.ts';
import { pieceRows, type PieceRow } from './piece-rows.ts';
import {
  axisOf,
  pieceHeader,
  pieceLegend,
  pieceLine,
  totalLines,
  totalsNote,
} from './piece-table.ts';
import { doubted, doubtWords } from './session-words.ts';
import { takeBackHints } from './take-back.ts';

/** Rows of the table that is shown, and the hours they come from. */
export function tableOf(
  state: Pick<HoursState, 'by'>,
  { bench, piece }: FoundPiece,
  { now }: Pick<View, 'now'>,
): { readonly hours: PieceHours; readonly rows: readonly PieceRow[] } {
  const hours = hoursOfPiece(bench, piece, now);
  return { hours, rows: pieceRows(hours, state.by ?? 'class') };
}

/** Hours of one piece: figures and pictures on one axis, then the totals, and why the marked row expects what it does. */
export function drawOnePiece(
  state: HoursState,
  found: FoundPiece,
  review: Review,
  view: View,
): Frame {
  const { columns, theme, snapshot } = view;
  const layout = pieceLayout(columns);
  const { hours, rows } = tableOf(state, found, view);
  const by = state.by ?? 'class';
  const at = Math.max(0, Math.min(state.at, rows.length - 1));
  const axis = axisOf(rows);
  const row = rows[at];
  const [title = lineOf(''), loud = lineOf('')] = heading(titleLine(hours, columns), view);
  const isCalling = loud[0]?.role === 'loud';
  const head = [title, ...(isCalling || !layout.isNarrow ? [loud] : [])];
  if (row === undefined) {
    const nothing = wrapWords(
      'No step is planned on this piece, and nothing was recorded on it.',
      columns,
    );
    return {
      lines: page([...head, ...nothing.map((text) => lineOf(text))], footOf(found, by, view), view),
    };
  }
  const { lookingBack } = snapshot;
  const isReading = lookingBack?.is === 'reading' && lookingBack.review === null;
  const about = [
    ...(found.piece.keptFromLearning === true ? ['Left out of learning.'] : []),
    ...aboutRow(row, found, review, snapshot.shop, layout.isNarrow, isReading),
  ];
  const totals = totalLines(hours, layout);
  const note = totalsNote(hours, rows.length, columns);
  const below = [
    ...totals,
    ...(layout.isNarrow ? [] : [note ?? lineOf('')]),
    pieceLegend(layout.isNarrow, theme.glyphs),
    ...sentencesThatFit(about, columns, layout.isNarrow ? 3 : 2).map((text) => lineOf(text)),
  ];
  const foot = footOf(found, by, view);
  const room = Math.max(1, view.rows - head.length - 1 - below.length - foot.length);
  // A narrow terminal has the note where no row goes for it.
  if (layout.isNarrow && note !== null && room > rows.length) below.splice(totals.length, 0, note);
  const from = shownAround(at, rows.length, room);
  const columnTitle = by === 'step' ? 'step' : layout.isNarrow ? 'class' : 'step class';
  const header = pieceHeader(tableTitle(columnTitle, at, rows.length, room), axis, layout);
  const table = rows
    .slice(from, from + room)
    .map((each, index) => pieceLine(each, from + index === at, axis, layout, theme.glyphs));
  return { lines: page([...head, header, ...table, ...below], foot, view) };
}

/** As many whole sentences, in their order, as so many lines hold. */
function sentencesThatFit(
  sentences: readonly string[],
  columns: number,
  most: number,
): readonly string[] {
  let lines: readonly string[] = [];
  let kept = '';
  for (const sentence of sentences) {
    const longer = kept === '' ? sentence : `${kept} ${sentence}`;
    const wrapped = wrapWords(longer, columns);
    if (lines.length > 0 && wrapped.length > most) break;
    kept = longer;
    lines = wrapped;
  }
  return lines.slice(0, most);
}

function titleLine({ piece, recorded, sessions }: PieceHours, columns: number): Line {
  const told = `${minutesSpent(recorded * 60_000)} in ${sessions} ${sessions === 1 ? 'session' : 'sessions'}`;
  const right = columns < 80 ? minutesSpent(recorded * 60_000) : `recorded ${told}`;
  return spread(
    [segment(`hours: ${calledPiece(piece)}`, 'strong')],
    [segment(right, 'quiet')],
    columns,
  );
}

/** A session that was perhaps left running, what the last key did, and the keys. */
function footOf(
  { piece, bench, inHistory }: FoundPiece,
  by: 'class' | 'step',
  view: View,
): readonly Line[] {
  const { columns, snapshot, now, theme } = view;
  const doubts = inHistory ? [] : doubted(bench, piece, now);
  const [first] = doubts;
  const more = doubts.length > 1 ? ` (${doubts.length - 1} more)` : '';
  const offer =
    first === undefined
      ? []
      : wrapWords(
          doubtWords(first, piece, columns < 80 ? 14 : 24, {
            shop: snapshot.shop,
            glyphs: theme.glyphs,
          }) + more,
          columns,
        )
          .slice(0, 4)
          .map((text) => lineOf(text, 'work lost'));
  const isNarrow = columns < 80;
  const leave = isNarrow ? 'x leave out' : 'x leave out of learning';
  const keys = [
    'w correct a session',
    by === 'class' ? 's step by step' : 's step classes',
    'Tab all pieces',
    piece.keptFromLearning === true ? 'x let it teach' : leave,
    ...(isNarrow ? [] : ['j job card']),
    ...takeBackHints(snapshot.bench, columns, theme.glyphs),
    'Esc back',
  ];
  return [...offer, ...messageLines(view), ...keyHints(keys, columns)];
}
