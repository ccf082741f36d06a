import type { BenchState } from '../bench/bench-state.ts';
import type { Press } from '../keys/press.ts';
import type { BenchPort } from '../port.ts';
import type { Step, View } from '../screen.ts';

/** What an empty bench offers. */
export type Offer = 'add' | 'demo';

export const offerWords: Readonly<Record<Offer, string>> = {
  add: 'add a piece',
  demo: 'open the demo: an invented shop, nothing in it is kept',
};

export const offersOf = ({ hasDemo }: Pick<View, 'hasDemo'>): readonly Offer[] =>
  hasDemo === true ? ['add', 'demo'] : ['add'];

/** The marked one. */
export function offerOf({ offer }: Pick<BenchState, 'offer'>, view: Pick<View, 'hasDemo'>): Offer {
  const offers = offersOf(view);
  return offer !== undefined && offers.includes(offer) ? offer : 'add';
}

/** Keys on an empty bench, where there is nothing that they could act on; null for those that do as always. */
export function pressEmptyBench(
  state: BenchState,
  { name }: Press,
  view: View,
  port: BenchPort,
): Step<BenchState> | null {
  const offers = offersOf(view);
  const marked = offerOf(state, view);
  const take = (offer: Offer): Step<BenchState> => {
    if (offer === 'add') return { state, open: { is: 'add piece', name: '', schedules: null } };
    port.openDemo?.();
    return { state };
  };
  switch (name) {
    case 'up':
    case 'down': {
      const by = name === 'up' ? -1 : 1;
      const next = offers[(offers.indexOf(marked) + by + offers.length) % offers.length];
      return { state: next === undefined ? state : { ...state, offer: next } };
    }
    case 'enter':
    case 'space':
      return take(marked);
    default: {
      const offer = /^[1-9]$/.test(name) ? offers[Number(name) - 1] : undefined;
      return offer === undefined ? null : take(offer);
    }
  }
}
