import { readDay, type CalendarDay } from '../../tracker/time/index.ts';
import { lineOf, segment } from '../drawing/index.ts';
import { fullDay, shopDay } from '../format/index.ts';
import { calledPiece } from '../parts/called-piece.ts';
import { fieldPage } from '../parts/field-page.ts';
import { backWhenDone } from '../parts/message-lines.ts';
import { editField } from '../parts/text-field.ts';
import { cursorBehind, fieldIn, withCursor } from '../parts/writing.ts';
import type { BenchPort } from '../port.ts';
import { refused, type Frame, type ScreenModule, type Step, type View } from '../screen.ts';
import type { HoldState } from '../screens.ts';

/** Puts a piece on hold: what it waits for, then the day on which to ask again, if any. */
export const holdScreen: ScreenModule<HoldState> = {
  draw: (state, view) =>
    state.day === null ? drawReason(state, view) : drawDay(state, state.day, view),

  typing: () => true,

  press: (state, press, view, port) => {
    const { day } = state;
    if (press.name === 'escape')
      return day === null ? { back: true } : { state: cursorBehind({ ...state, day: null }) };
    if (press.name === 'enter') {
      if (day !== null) return place(state, day, view, port);
      return state.reason.trim() === ''
        ? { message: refused('Not on hold: say what it waits for, so that you are asked for it.') }
        : { state: cursorBehind({ ...state, day: '' }) };
    }
    const edited = editField(fieldIn(day ?? state.reason, state), press);
    if (edited === null) return {};
    const { text } = edited;
    const written = day === null ? { ...state, reason: text } : { ...state, day: text };
    return { state: withCursor(written, edited) };
  },
};

function place(state: HoldState, day: string, view: View, port: BenchPort): Step<HoldState> {
  const askAgain = day.trim() === '' ? null : readDay(day, todayIn(view));
  if (askAgain !== null && !askAgain.ok)
    return { message: refused(`Not on hold: ${askAgain.says}`) };
  const { piece, reason } = state;
  return backWhenDone(
    port.act({ do: 'place hold', piece, reason, askAgain: askAgain?.day ?? null }),
  );
}

const todayIn = ({ now, snapshot }: View): CalendarDay => shopDay(now, snapshot.shop.zone);

function titleOf(state: HoldState, { snapshot }: View): string {
  const piece = snapshot.bench.pieces.get(state.piece);
  return `hold${piece === undefined ? '' : `: ${calledPiece(piece)}`}`;
}

const drawReason = (state: HoldState, view: View): Frame =>
  fieldPage(
    {
      title: titleOf(state, view),
      label: 'waits for',
      field: fieldIn(state.reason, state),
      hints: [
        'What it waits for: hinge plates, an answer, a dry day.',
        'A hold stops no window and silences no ping.',
      ],
      keys: ['Enter: next', 'Esc: no hold'],
    },
    view,
  );

function drawDay(state: HoldState, day: string, view: View): Frame {
  const read = readDay(day, todayIn(view));
  return fieldPage(
    {
      title: titleOf(state, view),
      above: [[segment('waits for  ', 'quiet'), segment(state.reason)], lineOf('')],
      label: 'ask again',
      field: fieldIn(day, state),
      hints: [
        read.ok
          ? fullDay(read.day)
          : 'The day on which to ask again: 28 Nov, Sat, in 3 days. Empty: never.',
      ],
      keys: ['Enter: on hold', 'Esc: back to the reason'],
    },
    view,
  );
}
