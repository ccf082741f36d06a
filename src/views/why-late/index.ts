import { lateCheckOf, type LateCheck, type Piece } from '../../tracker/bench/index.ts';
import { lateCauses, lateRemedies } from '../../tracker/trade/index.ts';
import { fitEnd, lineOf, width } from '../drawing/index.ts';
import { page } from '../page.ts';
import { calledPiece } from '../parts/called-piece.ts';
import { keyHints } from '../parts/key-hints.ts';
import { listPage, type ListPage } from '../parts/list-page.ts';
import { backWhenDone } from '../parts/message-lines.ts';
import type { ScreenModule, View } from '../screen.ts';
import type { WhyLateState } from '../screens.ts';

const notKnown = ':not known';

/** A surface that is "not yet" far beyond its time: why, and what is usually done about it. */
export const whyLateScreen: ScreenModule<WhyLateState> = {
  draw: (state, view) => {
    const late = lateOn(state, view);
    if (late !== null) return listPage(listOf(late), view);
    const told = [lineOf('Nothing on that piece is late any more.')];
    return { lines: page(told, keyHints(['Esc: back'], view.columns), view) };
  },

  press: (_, press) => (press.name === 'escape' ? { back: true } : {}),

  picked: ({ piece }, value, _view, port) => {
    const cause = lateCauses.find((each) => each === value);
    if (cause === undefined) return { back: true };
    return backWhenDone(port.act({ do: 'explain lateness', piece, cause }));
  },
};

type Late = LateCheck & { readonly piece: Piece };

function lateOn({ piece: id }: WhyLateState, { snapshot }: View): Late | null {
  const piece = snapshot.bench.pieces.get(id);
  if (piece?.place !== 'bench') return null;
  const late = lateCheckOf(snapshot.bench, piece, snapshot.sense);
  return late === null ? null : { ...late, piece };
}

function listOf({ piece, check, times }: Late): ListPage {
  const cells = Math.max(...lateCauses.map(width));
  const step = piece.steps.find(({ id }) => id === check.step)?.name ?? 'it';
  return {
    title: `not yet: ${calledPiece(piece)}, ${step}, ${times.toFixed(1)} times as long as expected`,
    above: [lineOf('What could it be?')],
    items: [
      ...lateCauses.map((cause) => ({
        value: cause,
        label: `${fitEnd(cause, cells)}  ${lateRemedies[cause]}`,
      })),
      { value: notKnown, label: `${fitEnd('not known', cells)}  back; the check is noted` },
    ],
    from: 0,
    hints: ['The label comes first. Steps against it: t, trouble.'],
    keys: ['Enter or its number: that is it', 'Esc: not known'],
  };
}
