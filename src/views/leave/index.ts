import { actOf, keyMapWith } from '../keys/key-map.ts';
import { scrolledBy, scrolledPage } from '../page.ts';
import { messageOf } from '../parts/message-lines.ts';
import type { BenchPort } from '../port.ts';
import type { ScreenModule, Step } from '../screen.ts';
import type { LeaveState } from '../screens.ts';
import { asksForKeeper, leavePage } from './leave-page.ts';

/** The key that opened this screen, still held down, is not yet an answer to it. */
const heldDown = 1000;

export const leaveScreen: ScreenModule<LeaveState> = {
  draw: ({ from = 0 }, view) => ({ lines: scrolledPage(leavePage(from, view), view) }),
  press: (state, press, view, port) => {
    const { openedAt = 0 } = state;
    if (press.name === 'enter') return { leave: true };
    if (press.name === 'escape') return { back: true };
    if (asksForKeeper(view) && (press.name === 'y' || press.name === 'n'))
      return leaveWith(press.name === 'y' ? 'yes' : 'no', port);
    if (actOf(keyMapWith(view.snapshot.settings.keys), press.name) === 'leave') {
      const since = view.now - openedAt;
      return since >= 0 && since < heldDown ? { state } : { leave: true };
    }
    const from = scrolledBy(press, leavePage(state.from ?? 0, view), view);
    return { state: from === null ? state : { ...state, from } };
  },
};

/** Remembers the answer and leaves; where it can't be remembered it says so and stays. */
function leaveWith(answer: 'yes' | 'no', port: BenchPort): Step<LeaveState> {
  const reply = port.choose('keeper', answer);
  return reply.ok ? { leave: true } : { message: messageOf(reply) };
}
