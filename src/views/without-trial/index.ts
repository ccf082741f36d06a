import { lockOn, lockWords, type Piece, type PlannedStep } from '../../tracker/bench/index.ts';
import { lineOf } from '../drawing/index.ts';
import { wrapWords } from '../drawing/wrap.ts';
import { page } from '../page.ts';
import { calledPiece } from '../parts/called-piece.ts';
import { keyHints } from '../parts/key-hints.ts';
import { listPage, type ListPage } from '../parts/list-page.ts';
import { messageOf } from '../parts/message-lines.ts';
import type { ScreenModule, View } from '../screen.ts';
import type { WithoutTrialState } from '../screens.ts';

const notNow = ':not now';

/** Why a step may be begun although its trial wasn't found ready; kept on the job card. */
const reasons = [
  'tried before, same wood and same products',
  'tried on another piece of this lot',
  'the owner knows, and wants it so',
] as const;

/** Asks for the reason before a step is begun without its trial. */
export const withoutTrialScreen: ScreenModule<WithoutTrialState> = {
  draw: (state, view) => {
    const found = stepIn(state, view);
    if (found !== null) return listPage(listOf(found, view), view);
    const gone = [lineOf('Nothing keeps that step any more.')];
    return { lines: page(gone, keyHints(['Esc: back'], view.columns), view) };
  },

  press: (_, press) => (press.name === 'escape' ? { back: true } : {}),

  picked: ({ piece, part, step }, value, _, port) => {
    if (value === notNow) return { back: true };
    const reply = port.act({ do: 'pick up', targets: [{ piece, part, step }], anyway: value });
    const message = messageOf(reply);
    return reply.ok ? { back: 'bench', select: piece, message } : { message };
  },
};

type Found = { readonly piece: Piece; readonly step: PlannedStep };

function stepIn(state: WithoutTrialState, { snapshot }: View): Found | null {
  const piece = snapshot.bench.pieces.get(state.piece);
  const step = piece?.steps.find(({ id }) => id === state.step);
  return piece === undefined || step === undefined ? null : { piece, step };
}

function listOf({ piece, step }: Found, { columns }: View): ListPage {
  const lock = lockOn(piece, step);
  const why = lock === null ? '' : `The trial: ${lockWords(piece, lock)}.`;
  return {
    title: `${calledPiece(piece)}, ${step.name}: why without its trial?`,
    above: wrapWords(why, columns).map((line) => lineOf(line)),
    items: [
      ...reasons.map((reason) => ({ value: reason, label: reason })),
      { value: notNow, label: 'not now: the trial first' },
    ],
    from: 0,
    hints: ['What goes wrong on a patch is small. The reason stands on the job card.'],
    keys: ['Enter or its number: pick it up', 'Esc: the trial first'],
  };
}
