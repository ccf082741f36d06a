import { actOf, keyMapWith } from '../keys/key-map.ts';
import { scrolledBy, scrolledPage } from '../page.ts';
import type { ScreenModule } from '../screen.ts';
import type { PingsState } from '../screens.ts';
import { pingLog } from './ping-log.ts';

export const pingsScreen: ScreenModule<PingsState> = {
  draw: ({ from }, view) => ({ lines: scrolledPage(pingLog(from, view), view) }),
  press: (state, press, view) => {
    const from = scrolledBy(press, pingLog(state.from, view), view);
    if (from !== null) return { state: { ...state, from } };
    const act = actOf(keyMapWith(view.snapshot.settings.keys), press.name);
    const leaves = press.name === 'escape' || press.name === 'enter' || act === 'pings';
    return leaves ? { back: true } : { state };
  },
};
