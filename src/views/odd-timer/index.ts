import { piecesOnBench } from '../../tracker/bench/index.ts';
import { lineOf, segment, type Line } from '../drawing/index.ts';
import { minutesSpent, whenInWords } from '../format/index.ts';
import { calledPiece } from '../parts/called-piece.ts';
import { fieldPage } from '../parts/field-page.ts';
import { backWhenDone } from '../parts/message-lines.ts';
import { editField } from '../parts/text-field.ts';
import { fieldIn, withCursor } from '../parts/writing.ts';
import { refused, type ScreenModule, type View } from '../screen.ts';
import type { OddTimerState } from '../screens.ts';
import { readTimer } from './read-timer.ts';

/** A count-down that belongs to no schedule: what it is for, and how long. */
export const oddTimerScreen: ScreenModule<OddTimerState> = {
  draw: (state, view) =>
    fieldPage(
      {
        title: 'odd timer',
        above: [onWhat(state, view), lineOf('')],
        label: 'timer',
        field: fieldIn(state.text, state),
        hints: [hintOf(state.text, view)],
        keys: ['Enter: start it', 'Tab: on another piece, or on none', 'Esc: no timer'],
      },
      view,
    ),

  typing: () => true,

  press: (state, press, view, port) => {
    if (press.name === 'escape') return { back: true };
    if (press.name === 'enter') {
      const read = readTimer(state.text);
      if (!read.ok) return { message: refused(`Not started: ${read.says}`) };
      const { label, ms } = read;
      return backWhenDone(port.act({ do: 'start timer', label, ms, piece: state.piece }));
    }
    if (press.name === 'tab' || press.name === 'down' || press.name === 'up') {
      const ids = [null, ...piecesOnBench(view.snapshot.bench).map(({ id }) => id)];
      const by = press.name === 'up' ? -1 : 1;
      const next = ids[(ids.indexOf(state.piece) + by + ids.length) % ids.length];
      return { state: { ...state, piece: next ?? null } };
    }
    const edited = editField(fieldIn(state.text, state), press);
    return edited === null ? {} : { state: withCursor({ ...state, text: edited.text }, edited) };
  },
};

function onWhat({ piece: id }: OddTimerState, { snapshot }: View): Line {
  const piece = id === null ? undefined : snapshot.bench.pieces.get(id);
  return [
    segment('on     ', 'quiet'),
    segment(piece === undefined ? 'no piece: a row of its own' : calledPiece(piece)),
  ];
}

function hintOf(text: string, { now, snapshot }: View): string {
  const read = readTimer(text);
  if (!read.ok) return 'What it is for and how long: clamps, 35 min.';
  return `${read.label}, ${minutesSpent(read.ms)}, till ${whenInWords(now + read.ms, now, snapshot.shop)}`;
}
