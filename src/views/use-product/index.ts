import type { Piece, PlannedStep } from '../../tracker/bench/index.ts';
import type { Product } from '../../tracker/trade/index.ts';
import { lineOf, segment } from '../drawing/index.ts';
import { calledPiece } from '../parts/called-piece.ts';
import { listPage, turnedPage, type ListPage } from '../parts/list-page.ts';
import { backWhenDone } from '../parts/message-lines.ts';
import { nextPage } from '../parts/pick-page.ts';
import type { ScreenModule, View } from '../screen.ts';
import type { UseProductState } from '../screens.ts';

/** Which product a step that is not begun uses: a generic class, or one's own can. */
export const useProductScreen: ScreenModule<UseProductState> = {
  draw: (state, view) => listPage(listOf(state, view), view),

  load: async (state, port) => ({ ...state, products: (await port.schedules()).products }),

  press: (_, { name }) => (name === 'escape' ? { back: true } : {}),

  picked: (state, value, view, port) => {
    if (value === nextPage)
      return { state: { ...state, from: turnedPage(listOf(state, view), view) } };
    const product = state.products?.find(({ id }) => id === value);
    if (product === undefined) return {};
    const { piece, step } = state;
    return backWhenDone(port.act({ do: 'use product', piece, step, product }));
  },
};

function listOf(state: UseProductState, view: View): ListPage {
  const piece = view.snapshot.bench.pieces.get(state.piece);
  const step = piece?.steps.find(({ id }) => id === state.step);
  const using = piece === undefined || step === undefined ? null : usedBy(piece, step);
  return {
    title: `product for ${step?.name ?? ''}${piece === undefined ? '' : ` on ${calledPiece(piece)}`}`,
    above: [[segment('so far  ', 'quiet'), segment(using?.name ?? 'none')], lineOf('')],
    items: likely(state.products ?? [], using).map(({ id, name, can }) => ({
      value: id,
      label: can?.batch === undefined ? name : `${name}, batch ${can.batch}`,
    })),
    from: state.from ?? 0,
    hints: [
      state.products === null
        ? 'reading the products'
        : 'The piece takes its own copy. Your own cans are in files of yours: recoat product copy.',
    ],
    keys: ['Enter or its number: use it', 'Esc: as it was'],
  };
}

const usedBy = (piece: Piece, step: PlannedStep): Product | null =>
  (step.product === undefined ? undefined : piece.products[step.product]) ?? null;

/** One's own cans first, then what dries as what is used now does, then the rest. */
function likely(products: readonly Product[], using: Product | null): readonly Product[] {
  const place = ({ can, productClass, chemistry }: Product): number => {
    if (productClass === using?.productClass) return can === undefined ? 1 : 0;
    if (can !== undefined) return 2;
    return chemistry === using?.chemistry ? 3 : 4;
  };
  return products.toSorted((a, b) => place(a) - place(b));
}
