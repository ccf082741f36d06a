import { offeredStamps, type OutrightStamp, type Piece } from '../../tracker/bench/index.ts';
import { fitEnd, lineOf, width } from '../drawing/index.ts';
import { stampEffect, stampName } from '../format/index.ts';
import { page } from '../page.ts';
import { calledPiece } from '../parts/called-piece.ts';
import { keyHints } from '../parts/key-hints.ts';
import { listPage, turnedPage, type ListPage } from '../parts/list-page.ts';
import { backWhenDone } from '../parts/message-lines.ts';
import { nextPage } from '../parts/pick-page.ts';
import type { ScreenModule, View } from '../screen.ts';
import type { OtherStampState } from '../screens.ts';

/** The stamps that no sequence expects: those that would change what runs on a piece, each with what it would do. */
export const otherStampScreen: ScreenModule<OtherStampState> = {
  draw: (state, view) => {
    const piece = pieceOf(state, view);
    if (piece !== null) return listPage(listOf(state, piece, view), view);
    const gone = [lineOf('That piece is not on the bench any more.')];
    return { lines: page(gone, keyHints(['Esc: bench'], view.columns), view) };
  },

  press: (_, press) => (press.name === 'escape' ? { back: true } : {}),

  picked: (state, value, view, port) => {
    const piece = pieceOf(state, view);
    if (piece === null) return { back: true };
    if (value === nextPage)
      return { state: { ...state, from: turnedPage(listOf(state, piece, view), view) } };
    const chosen = stampsFor(state, piece, view).find((each) => valueOf(each) === value);
    if (chosen === undefined) return {};
    const { event, agent, step } = chosen;
    return backWhenDone(
      port.act({
        do: 'stamp',
        piece: piece.id,
        part: state.part,
        step: step.id,
        event,
        ...(agent === null ? {} : { agent }),
      }),
    );
  },
};

function pieceOf({ piece: id }: OtherStampState, { snapshot }: View): Piece | null {
  const piece = snapshot.bench.pieces.get(id);
  return piece?.place === 'bench' ? piece : null;
}

const stampsFor = (
  { part }: OtherStampState,
  piece: Piece,
  { snapshot, now }: View,
): readonly OutrightStamp[] =>
  offeredStamps(snapshot.bench, piece, part, { now, sense: snapshot.sense });

const valueOf = ({ step, event, agent }: OutrightStamp): string =>
  [event, agent ?? '', step.id].join(' ');

function listOf(state: OtherStampState, piece: Piece, view: View): ListPage {
  const stamps = stampsFor(state, piece, view);
  const part = piece.parts.find(({ id }) => id === state.part);
  const cells = Math.max(0, ...stamps.map((each) => width(stampName(each))));
  const steps = new Set(stamps.map(({ step }) => step.id));
  return {
    title: `another stamp: ${calledPiece(piece)}${part === undefined ? '' : `, ${part.name}`}`,
    above: [
      lineOf(stamps.length === 0 ? 'Nothing runs that another stamp would change.' : '', 'quiet'),
    ],
    items: stamps.map((each) => ({
      value: valueOf(each),
      label: [
        `${fitEnd(stampName(each), cells)}  ${stampEffect(each, view.now, view.snapshot.shop)}`,
        ...(steps.size > 1 ? [each.step.name] : []),
      ].join('; '),
    })),
    from: state.from ?? 0,
    hints:
      stamps.length === 0 ? [] : ['Pressed late? , on the bench moves the last stamp earlier.'],
    keys: [...(stamps.length === 0 ? [] : ['Enter or its number: stamped now']), 'Esc: bench'],
  };
}
