import { answerTo, askingSteps, type AskingStep, type Piece } from '../../tracker/bench/index.ts';
import { lineOf } from '../drawing/index.ts';
import { page } from '../page.ts';
import { calledPiece } from '../parts/called-piece.ts';
import { keyHints } from '../parts/key-hints.ts';
import { listPage, turnedPage, type ListPage } from '../parts/list-page.ts';
import { backWhenDone } from '../parts/message-lines.ts';
import { nextPage } from '../parts/pick-page.ts';
import type { ScreenModule, View } from '../screen.ts';
import type { QuestionState } from '../screens.ts';

/** Values of the items that are no answer. */
const notNow = ':not now';
const none = ':no answer';

/** What a step with a question showed, picked from its answers. */
export const questionScreen: ScreenModule<QuestionState> = {
  draw: (state, view) => {
    const asked = askedBy(state, view);
    if (asked === null) {
      const gone = [lineOf('That step is not on the bench any more.')];
      return { lines: page(gone, keyHints(['Esc: back'], view.columns), view) };
    }
    return listPage(listOf(state, asked), view);
  },

  press: (_, press) => (press.name === 'escape' ? { back: true } : {}),

  picked: (state, value, view, port) => {
    const asked = askedBy(state, view);
    if (asked === null || value === notNow) return { back: true };
    if (value === nextPage)
      return { state: { ...state, from: turnedPage(listOf(state, asked), view) } };
    return backWhenDone(
      port.act({
        do: 'answer',
        piece: state.piece,
        step: state.step,
        answer: value === none ? null : value,
      }),
    );
  },
};

type Asked = { readonly piece: Piece; readonly step: AskingStep };

function askedBy(state: QuestionState, { snapshot }: View): Asked | null {
  const piece = snapshot.bench.pieces.get(state.piece);
  if (piece?.place !== 'bench') return null;
  const step = askingSteps(piece).find(({ id }) => id === state.step);
  return step === undefined ? null : { piece, step };
}

function listOf(state: QuestionState, { piece, step }: Asked): ListPage {
  const given = answerTo(piece, step);
  return {
    title: `${calledPiece(piece)}, ${step.name}: ${step.asks.question}`,
    above: given === null ? [] : [lineOf(`so far: ${given}`, 'quiet')],
    items: [
      ...step.asks.answers.map(({ id, says }) => ({ value: id, label: says })),
      given === null
        ? { value: notNow, label: 'not now' }
        : { value: none, label: 'not known after all' },
    ],
    from: state.from ?? 0,
    hints: ['What follows from it, in steps and hours, changes with the answer.'],
    keys: ['Enter or its number: that is it', 'Esc: not now; a in the opened piece asks again'],
  };
}
