import { actOf, keyMapWith } from '../keys/key-map.ts';
import { scrolledBy, scrolledPage } from '../page.ts';
import type { ScreenModule } from '../screen.ts';
import type { LeaveState } from '../screens.ts';
import { leavePage } from './leave-page.ts';

/** The key that opened this screen, still held down, is not yet an answer to it. */
const heldDown = 1000;

export const leaveScreen: ScreenModule<LeaveState> = {
  draw: ({ from = 0 }, view) => ({ lines: scrolledPage(leavePage(from, view), view) }),
  press: (state, press, view) => {
    const { openedAt = 0 } = state;
    if (press.name === 'enter') return { leave: true };
    if (press.name === 'escape') return { back: true };
    if (actOf(keyMapWith(view.snapshot.settings.keys), press.name) === 'leave') {
      const since = view.now - openedAt;
      return since >= 0 && since < heldDown ? { state } : { leave: true };
    }
    const from = scrolledBy(press, leavePage(state.from ?? 0, view), view);
    return { state: from === null ? state : { ...state, from } };
  },
};
