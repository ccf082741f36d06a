import { keyMapWith, keyOf, type Act } from '../keys/key-map.ts';
import { isLookedAfter, isSomethingRunning } from '../leave/leave-page.ts';
import type { Step } from '../screen.ts';
import { actOnSelected, type Acting } from './act-on-selected.ts';
import { backTo } from './back-to.ts';
import type { BenchState } from './bench-state.ts';
import { moveSelection } from './selection.ts';
import { told } from './told.ts';

/** What an act does: an intent, another screen, or a move of the selection. */
export function perform(act: Act, acting: Acting): Step<BenchState> {
  const { state, rows, view, port } = acting;
  const { selected } = rows;
  switch (act) {
    case 'all keys':
      return { state, open: { is: 'keys' } };
    case 'list':
      return { state: { ...state, list: 'first' } };
    case 'add':
      return { state, open: { is: 'add piece', name: '', schedules: null } };
    case 'conditions':
      return { state, open: { is: 'conditions', text: '' } };
    case 'odd timer':
      return { state, open: { is: 'odd timer', text: '', piece: selected?.piece?.id ?? null } };
    case 'pots':
      return { state, open: { is: 'pots', products: null } };
    case 'settings':
      return { state, open: { is: 'settings', at: 0 } };
    case 'past pieces':
      return { state, open: { is: 'past pieces', find: '', at: 0, past: null } };
    case 'pings':
      return { state, open: { is: 'pings', from: 0 } };
    case 'overnight':
      return { state, open: { is: 'shut up shop', answers: {}, at: 0 } };
    case 'minutes':
      return {
        state,
        open: { is: 'hours', piece: selected?.piece?.id ?? null, at: 0, past: null },
      };
    case 'leave': {
      const { bench, sense } = view.snapshot;
      return isSomethingRunning(bench, view.now, sense) && !isLookedAfter(view)
        ? { state, open: { is: 'leave', openedAt: view.now } }
        : { state, leave: true };
    }
    case 'take back':
      return told(
        state,
        port.act({ do: 'take back' }),
        keyOf(keyMapWith(view.snapshot.settings.keys), 'bring back'),
      );
    case 'bring back':
      return told(state, port.act({ do: 'bring back' }));
    case 'back to':
      return backTo(state, view, port);
    case 'up':
    case 'down':
      return { state: moveSelection(state, rows, act === 'up' ? -1 : 1) };
    default:
      return actOnSelected(act, selected, acting);
  }
}
