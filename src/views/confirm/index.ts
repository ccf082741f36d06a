import {
  isDone,
  sessionHolding,
  standingOf,
  type Bench,
  type Piece,
} from '../../tracker/bench/index.ts';
import { stateAt } from '../../tracker/windows/index.ts';
import { lineOf, type Line } from '../drawing/index.ts';
import { wrapWords } from '../drawing/wrap.ts';
import { page } from '../page.ts';
import { heading } from '../parts/heading.ts';
import { keyHints } from '../parts/key-hints.ts';
import { messageLines, messageOf } from '../parts/message-lines.ts';
import { calledPiece } from '../parts/called-piece.ts';
import type { ScreenModule, View } from '../screen.ts';
import type { ConfirmState } from '../screens.ts';

/** Asks before a piece leaves the bench, or is removed. */
export const confirmScreen: ScreenModule<ConfirmState> = {
  draw: (state, view) => ({ lines: page(body(state, view), foot(state, view), view) }),

  press: (state, { name }, view, port) => {
    if (name === 'n' || name === 'escape') return { back: true };
    if (name !== 'y') return {};
    const wasOnBench = view.snapshot.bench.pieces.get(state.piece)?.place === 'bench';
    const reply = port.act({ do: state.asks, piece: state.piece });
    return { back: reply.ok && wasOnBench ? 'bench' : true, message: messageOf(reply) };
  },
};

function body(state: ConfirmState, view: View): readonly Line[] {
  const { bench } = view.snapshot;
  const piece = bench.pieces.get(state.piece);
  if (piece === undefined) return heading(lineOf('That piece is gone.', 'strong'), view);
  const [title = '', ...rest] = wrapWords(question(state, piece), view.columns);
  const told = [consequence(state), ...circumstances(bench, piece, view)];
  return [
    ...heading(lineOf(title, 'strong'), view).slice(0, 1),
    ...rest.map((line) => lineOf(line, 'strong')),
    ...heading(lineOf(''), view).slice(1),
    ...told.flatMap((sentence) => wrapWords(sentence, view.columns).map((line) => lineOf(line))),
  ];
}

const question = ({ asks }: ConfirmState, piece: Piece): string =>
  asks === 'remove piece'
    ? `Remove ${calledPiece(piece)}?`
    : `Take ${calledPiece(piece)} off the bench?`;

const consequence = ({ asks }: ConfirmState): string =>
  asks === 'remove piece'
    ? 'Hidden, left out of learning; the record stays.'
    : 'It goes to the past pieces, from where it can be put back; its number is free again.';

/** What would be given up with it: hands on it, steps to do, windows that run. */
function circumstances(bench: Bench, piece: Piece, view: View): readonly string[] {
  if (piece.place !== 'bench') return [];
  const told: string[] = [];
  if (sessionHolding(bench, piece.id) !== null) told.push('It is in hand: it is put down first.');
  const planned = piece.steps.filter((step) => !step.skipped);
  const open = planned.filter((step) => !isDone(piece, step.id, null)).length;
  if (open > 0) told.push(`Still to do: ${open} of ${planned.length} steps.`);
  const { windows } = standingOf(bench, piece, view.now, view.snapshot.sense);
  // An odd timer goes on as a row of its own.
  const running = windows.filter(
    (window) => window.rule.kind !== 'timer' && stateAt(window, view.now) !== 'done',
  ).length;
  if (running > 0)
    told.push(
      `${running === 1 ? 'A window still runs' : `${running} windows still run`} on it: off the bench nothing pings.`,
    );
  return told;
}

const foot = ({ asks }: ConfirmState, view: View): readonly Line[] => [
  ...messageLines(view),
  ...keyHints(
    [asks === 'remove piece' ? 'y: remove it' : 'y: take it off', 'n or Esc: keep it'],
    view.columns,
    3,
  ),
];
