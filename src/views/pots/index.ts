import { isMixed, openPots, piecesOnBench, potCalled } from '../../tracker/bench/index.ts';
import type { Product } from '../../tracker/trade/index.ts';
import { lineOf } from '../drawing/index.ts';
import { listPage, turnedPage, type ListPage } from '../parts/list-page.ts';
import { backWhenDone } from '../parts/message-lines.ts';
import { nextPage } from '../parts/pick-page.ts';
import type { ScreenModule, View } from '../screen.ts';
import type { PotsState } from '../screens.ts';
import { potStands } from './pot-stands.ts';

/** Pots that stand on the bench, to be washed out, and what can be mixed. */
export const potsScreen: ScreenModule<PotsState> = {
  draw: (state, view) => listPage(listOf(state, view), view),

  load: async (state, port) => ({ ...state, products: (await port.schedules()).products }),

  press: (_, { name }) => (name === 'escape' ? { back: true } : {}),

  picked: (state, value, view, port) => {
    if (value === nextPage)
      return { state: { ...state, from: turnedPage(listOf(state, view), view) } };
    const [act, id] = value.split(/ (.*)/s);
    const product = mixable(state, view).find((each) => each.id === id);
    if (act === 'wash' && id !== undefined) {
      return backWhenDone(port.act({ do: 'wash out pot', pot: id }));
    }
    if (product === undefined) return {};
    return backWhenDone(port.act({ do: 'mix pot', product }));
  },
};

/** What the pieces on the bench use comes first, as they carry it; then all else there is. */
function mixable({ products }: PotsState, { snapshot }: View): readonly Product[] {
  const carried = piecesOnBench(snapshot.bench).flatMap((piece) => Object.values(piece.products));
  const byId = new Map<string, Product>();
  for (const product of [...carried, ...(products ?? [])])
    if (!byId.has(product.id) && isMixed(product)) byId.set(product.id, product);
  return [...byId.values()];
}

function listOf(state: PotsState, view: View): ListPage {
  const open = openPots(view.snapshot.bench);
  return {
    title: 'pots: wash one out, or mix one',
    above: [lineOf('')],
    items: [
      ...open.map((pot) => ({
        value: `wash ${pot.id}`,
        label: `wash out ${potCalled(pot)}: ${potStands(pot, view)}`,
      })),
      ...mixable(state, view).map(({ id, name }) => ({ value: `mix ${id}`, label: `mix ${name}` })),
    ],
    from: state.from ?? 0,
    hints: [
      state.products === null
        ? 'reading the products'
        : 'Pieces that use it take from the pot; its row and its pings are its own.',
    ],
    keys: ['Enter or its number', 'Esc: bench'],
  };
}
