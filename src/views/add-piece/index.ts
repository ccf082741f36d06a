import { freeNumber } from '../../tracker/bench/index.ts';
import { outlookAround, pieceOutlook } from '../../tracker/estimate/index.ts';
import { lineOf, type Line } from '../drawing/index.ts';
import { wrapWords } from '../drawing/wrap.ts';
import { daysAtLeast, outlookHours } from '../format/index.ts';
import { fieldPage } from '../parts/field-page.ts';
import { listPage, turnedPage, type ListPage } from '../parts/list-page.ts';
import { messageOf } from '../parts/message-lines.ts';
import { nextPage } from '../parts/pick-page.ts';
import { editField } from '../parts/text-field.ts';
import { fieldIn, withCursor } from '../parts/writing.ts';
import { refused, type Frame, type ScreenModule, type View } from '../screen.ts';
import type { AddPieceState } from '../screens.ts';
import { scheduleItems } from './schedule-list.ts';

/** Adding a piece: its name, then its finishing schedule. All else can wait. */
export const addPieceScreen: ScreenModule<AddPieceState> = {
  draw: (state, view) => (state.from === undefined ? drawName(state, view) : drawList(state, view)),

  load: async (state, port) => ({ ...state, ...(await port.schedules()) }),

  typing: ({ from }) => from === undefined,

  press: (state, press) => {
    if (state.from !== undefined) return press.name === 'escape' ? { state: naming(state) } : {};
    if (press.name === 'escape') return { back: true };
    if (press.name === 'enter') {
      return state.name.trim() === ''
        ? { message: refused('Not added: a piece needs a name.') }
        : { state: { ...state, from: 0 } };
    }
    const edited = editField(fieldIn(state.name, state), press);
    return edited === null ? {} : { state: withCursor({ ...state, name: edited.text }, edited) };
  },

  picked: (state, value, view, port) => {
    if (value === nextPage)
      return { state: { ...state, from: turnedPage(listOf(state, view), view) } };
    const schedule = state.schedules?.find(({ id }) => id === value);
    if (schedule === undefined) return {};
    const reply = port.act({ do: 'add piece', name: state.name, schedule });
    const message = messageOf(reply);
    // What is wrong with it is the name: the schedule was there to be picked.
    if (!reply.ok) return { state: naming(state), message };
    if (reply.piece === null) return { back: true, message };
    const told = outlookOf(port.snapshot(), reply.piece, view.now);
    return { back: true, message: { ...message, text: message.text + told }, select: reply.piece };
  },
};

/** `: 7 to 19 h, 4 times in 5; at least 12 days` */
function outlookOf(
  { bench, settings, sense }: View['snapshot'],
  id: string,
  now: View['now'],
): string {
  const piece = bench.pieces.get(id);
  const outlook =
    piece === undefined ? null : pieceOutlook(bench, piece, outlookAround(settings, sense, now));
  return outlook === null ? '' : `: ${outlookHours(outlook)}; ${daysAtLeast(outlook.days)}`;
}

function naming({ from: _, ...state }: AddPieceState): AddPieceState {
  return state;
}

function drawName(state: AddPieceState, view: View): Frame {
  return fieldPage(
    {
      title: 'add a piece, 1 of 2',
      label: 'name ',
      field: fieldIn(state.name, state),
      hints: [
        `Number ${freeNumber(view.snapshot.bench)} is free. Tag its bag of hardware with it.`,
      ],
      keys: ['Enter: next', 'Esc: no piece'],
    },
    view,
  );
}

function drawList(state: AddPieceState, view: View): Frame {
  return listPage(listOf(state, view), view);
}

function listOf(state: AddPieceState, view: View): ListPage {
  const { schedules, problems = [] } = state;
  const items = scheduleItems(schedules ?? [], view);
  return {
    title: `add a piece, 2 of 2: ${state.name.trim()}`,
    above:
      schedules === null
        ? [lineOf('Reading the finishing schedules.')]
        : missing(schedules.length, view),
    items,
    from: state.from ?? 0,
    hints: [
      ...(items.length === 0
        ? []
        : [
            'Hours from the finishing schedule, not yet from you. Wood, size, date: later.',
            ...(view.columns < 60
              ? []
              : [
                  `Days at the least, for what dries or sets, with hands at work ${view.snapshot.settings.shopHours}.`,
                ]),
          ]),
      ...problems.map((problem) => `Left out: ${problem}`),
    ],
    keys: [
      ...(items.length === 0 ? [] : ['Enter or its number: on the bench']),
      'Esc: back to the name',
    ],
  };
}

const missing = (schedules: number, { columns }: View): readonly Line[] =>
  schedules > 0
    ? []
    : wrapWords(
        'There is no finishing schedule to pick. Mend the files named below, or add one.',
        columns,
      ).map((line) => lineOf(line));
