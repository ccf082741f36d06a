import { inHand, type Session } from '../../tracker/bench/index.ts';
import { clock, minutesSpent } from '../format/index.ts';
import { calledPiece } from '../parts/called-piece.ts';
import { listPage, turnedPage, type ListPage } from '../parts/list-page.ts';
import { messageOf } from '../parts/message-lines.ts';
import { nextPage } from '../parts/pick-page.ts';
import type { ScreenModule, View } from '../screen.ts';
import type { WhichToPutDownState } from '../screens.ts';

/** The key that opened the list may bounce or still be held down; it is not yet an answer. */
const heldDown = 1000;

/** Both pairs of hands are full: which piece is put down for the one that the key was pressed on. */
export const whichToPutDownScreen: ScreenModule<WhichToPutDownState> = {
  draw: (state, view) => listPage(listOf(state, view), view),

  press: (_, { name }) => (name === 'escape' ? { back: true } : {}),

  picked: (state, value, view, port) => {
    const since = view.now - state.openedAt;
    if (since >= 0 && since < heldDown) return {};
    if (value === nextPage)
      return { state: { ...state, from: turnedPage(listOf(state, view), view) } };
    // Put down meanwhile at another window: then there is a hand for it anyway.
    const isHeld = couldPutDown(state, view).some(({ id }) => id === value);
    const intent = { ...state.intent, ...(isHeld ? { putDown: value } : {}) };
    const reply = port.act(intent, state.openedAt);
    return reply.ok
      ? { back: 'bench', message: messageOf(reply) }
      : { back: true, message: messageOf(reply) };
  },
};

const couldPutDown = ({ sessions }: WhichToPutDownState, view: View): readonly Session[] =>
  inHand(view.snapshot.bench).filter(({ id }) => sessions.includes(id));

function listOf(state: WhichToPutDownState, view: View): ListPage {
  const { bench, shop } = view.snapshot;
  const piece = bench.pieces.get(pieceOf(state.intent));
  return {
    title: `which to put down${piece === undefined ? '' : ` for ${calledPiece(piece)}`}`,
    items: couldPutDown(state, view).map((session) => ({
      value: session.id,
      label: `${workCalled(session, view)}, ${minutesSpent(view.now - session.start)}`,
    })),
    from: state.from ?? 0,
    hints: [`No hand is free. It counts from ${clock(state.openedAt, shop)}, when you pressed.`],
    keys: ['Enter or its number: put that down', 'Esc: nothing changes'],
  };
}

const pieceOf = (intent: WhichToPutDownState['intent']): string =>
  intent.do === 'pick up' ? (intent.targets[0]?.piece ?? '') : intent.piece;

/** `Oak chest [1], coat 1`: a piece's number first would be taken for the number that picks it. */
const workCalled = ({ targets }: Session, { snapshot: { bench } }: View): string =>
  targets
    .flatMap(({ piece: id, step: stepId }) => {
      const piece = bench.pieces.get(id);
      if (piece === undefined) return [];
      const step = piece.steps.find((each) => each.id === stepId);
      return [`${piece.name} [${piece.number}], ${step?.name ?? 'other work'}`];
    })
    .join(' and ');
