import { plainStep } from '../../tracker/bench/index.ts';
import { remedySteps, troublesTried, type Trouble } from '../../tracker/trade/index.ts';
import { fitEnd, lineOf, width } from '../drawing/index.ts';
import { wrapWords } from '../drawing/wrap.ts';
import { air } from '../format/index.ts';
import { page } from '../page.ts';
import { calledPiece } from '../parts/called-piece.ts';
import { fieldPage } from '../parts/field-page.ts';
import { heading } from '../parts/heading.ts';
import { keyHints } from '../parts/key-hints.ts';
import { labelLength } from '../parts/label-length.ts';
import { lastStrokeOf } from '../parts/last-stroke.ts';
import { listPage, turnedPage, type ListPage } from '../parts/list-page.ts';
import { messageLines, messageOf } from '../parts/message-lines.ts';
import { nextPage, type PickItem } from '../parts/pick-page.ts';
import { editField } from '../parts/text-field.ts';
import { cursorBehind, fieldIn, withCursor } from '../parts/writing.ts';
import type { BenchPort } from '../port.ts';
import { refused, type Frame, type ScreenModule, type Step, type View } from '../screen.ts';
import type { TroubleState } from '../screens.ts';
import { triedOn, type Tried } from './tried-window.ts';

/** Value of the item for a `t` that was pressed by mistake. */
const noTrouble = ':no trouble';
/** The item that is no remedy: what it was is written. */
const unlisted = 'none of these';

/** A surface was tried and showed trouble: what, and what is done about it. */
export const troubleScreen: ScreenModule<TroubleState> = {
  draw: (state, view) => {
    const tried = triedOn(state, view);
    if (tried === null) return drawNothing(state, view);
    return state.text === undefined
      ? listPage(listOf(state, tried, view), view)
      : drawWriting(state, state.text, tried, view);
  },

  typing: ({ text }) => text !== undefined,

  press: (state, press, view, port) => {
    const tried = triedOn(state, view);
    if (tried === null) return press.name === 'escape' ? { back: true } : {};
    const { text } = state;
    if (text === undefined) return press.name === 'escape' ? note(state, tried, port) : {};
    if (press.name === 'escape') return { state: toList(state) };
    if (press.name === 'enter') {
      const shown = text.trim();
      return shown === ''
        ? { message: refused('Not noted: say what it showed.') }
        : note(state, tried, port, shown);
    }
    const edited = editField(fieldIn(text, state), press);
    return edited === null ? {} : { state: withCursor({ ...state, text: edited.text }, edited) };
  },

  picked: (state, value, view, port) => {
    const tried = triedOn(state, view);
    if (tried === null) return {};
    if (value === nextPage)
      return { state: { ...state, from: turnedPage(listOf(state, tried, view), view) } };
    if (value === noTrouble) return { back: true };
    if (value === unlisted) return { state: cursorBehind({ ...state, text: '' }) };
    const trouble = troublesFor(tried).find(({ id }) => id === value);
    return trouble === undefined ? {} : note(state, tried, port, trouble.name, trouble);
  },
};

const troublesFor = ({ window, step }: Tried): readonly Trouble[] =>
  troublesTried(window.rule, step.stepClass);

function toList({ text: _, ...state }: TroubleState): TroubleState {
  return cursorBehind(state);
}

/** Notes the trouble, with what it showed where that is known, and puts its remedies in. */
function note(
  { part }: TroubleState,
  { piece, step, window }: Tried,
  port: BenchPort,
  shown?: string,
  trouble?: Trouble,
): Step<TroubleState> {
  const remedies = trouble === undefined ? [] : remedySteps(trouble, plainStep(step));
  const reply = port.act({
    do: 'check',
    piece: piece.id,
    part,
    finding: 'trouble',
    window: window.key,
    ...(shown === undefined ? {} : { shown }),
    ...(remedies.length === 0 ? {} : { remedies }),
  });
  const message = messageOf(reply);
  return reply.ok ? { back: true, message, select: piece.id } : { message };
}

function listOf(state: TroubleState, tried: Tried, view: View): ListPage {
  const troubles = troublesFor(tried);
  const nameCells = Math.max(...troubles.map(({ name }) => width(name)));
  const items: readonly PickItem[] = [
    ...troubles.map(({ id, name, remedy }) => ({
      value: id,
      label: `${fitEnd(name, nameCells)}  ${remedy}`,
      whole: remedy,
    })),
    { value: noTrouble, label: `${fitEnd('no trouble', nameCells)}  back, nothing noted` },
  ];
  return {
    title: titleOf(tried, view),
    above: [lineOf('What did it show?')],
    items,
    from: state.from ?? 0,
    hints: ['The label comes first. Trouble teaches the drying times nothing.'],
    keys: ['Enter or its number: put these steps in after it', 'Esc: trouble noted, no steps'],
  };
}

/** `trouble: 3 Beech stool, clear coat 2, 3 h 48 after last stroke, 15 C 65 %` */
function titleOf({ piece, step, window }: Tried, view: View): string {
  const { bench, readings, shop } = view.snapshot;
  const stroke = lastStrokeOf(bench, piece, window);
  const reading = readings.at(-1);
  return [
    `trouble: ${calledPiece(piece)}`,
    step.name,
    ...(stroke === null ? [] : [`${labelLength(view.now - stroke)} after last stroke`]),
    ...(reading === undefined ? [] : [air(reading, shop.temperature)]),
  ].join(', ');
}

const drawWriting = (state: TroubleState, text: string, tried: Tried, view: View): Frame =>
  fieldPage(
    {
      title: titleOf(tried, view),
      label: 'it showed',
      field: fieldIn(text, state),
      hints: ['It stands on the job card. Steps against it: i in the opened piece.'],
      keys: ['Enter: trouble noted', 'Esc: back to the list'],
    },
    view,
  );

function drawNothing(state: TroubleState, view: View): Frame {
  const piece = view.snapshot.bench.pieces.get(state.piece);
  const name = piece === undefined ? 'the piece' : calledPiece(piece);
  const told = `Nothing on ${name} is drying or setting, so there is nothing to try.`;
  const body = [
    ...heading(lineOf(piece === undefined ? 'trouble' : `trouble: ${name}`, 'strong'), view),
    ...wrapWords(told, view.columns).map((line) => lineOf(line)),
    ...wrapWords('Something else went wrong? Write a note on it.', view.columns).map((line) =>
      lineOf(line, 'quiet'),
    ),
  ];
  return {
    lines: page(body, [...messageLines(view), ...keyHints(['Esc: bench'], view.columns)], view),
  };
}
