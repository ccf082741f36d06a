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

  load: async (state, port) => {
    const { products, problems } = await port.schedules();
    return { ...state, products, problems };
  },

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
  const products = state.products ?? [];
  const using = piece === undefined || step === undefined ? null : usedBy(piece, step);
  return {
    title: `product for ${step?.name ?? ''}${piece === undefined ? '' : ` on ${calledPiece(piece)}`}`,
    above: [[segment('so far  ', 'quiet'), segment(using?.name ?? 'none')], lineOf('')],
    items: likely(products, using).map((product) => ({
      value: product.id,
      label: labelOf(product, products),
    })),
    from: state.from ?? 0,
    hints: [
      state.products === null
        ? 'reading the products'
        : 'The piece takes its own copy. Your own cans are in files of yours: recoat product copy.',
      ...(state.problems ?? []).map((problem) => `Left out: ${problem}`),
    ],
    keys: ['Enter or its number: use it', 'Esc: as it was'],
  };
}

/** Its name and batch; its id too where another one has the same name, as a copy has that was not renamed. */
function labelOf({ id, name, can }: Product, all: readonly Product[]): string {
  const isShared = all.some((other) => other.id !== id && other.name === name);
  return [
    name,
    ...(isShared ? [id] : []),
    ...(can?.batch === undefined ? [] : [`batch ${can.batch}`]),
  ].join(', ');
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
