import { keyMapWith, actOf } from '../keys/key-map.ts';
import { scrolledBy, scrolledPage } from '../page.ts';
import type { ScreenModule } from '../screen.ts';
import type { KeysState } from '../screens.ts';
import { keysSheet } from './keys-sheet.ts';

export const keysScreen: ScreenModule<KeysState> = {
  draw: (state, view) => ({ lines: scrolledPage(keysSheet(state.from ?? 0, view), view) }),
  press: (state, press, view) => {
    const asked = keysSheet(state.from ?? 0, view);
    const from = scrolledBy(press, asked, view);
    if (from !== null) return { state: { ...state, from } };
    const act = actOf(keyMapWith(view.snapshot.settings.keys), press.name);
    const leaves = press.name === 'escape' || press.name === 'enter' || act === 'all keys';
    return leaves ? { back: true } : { state };
  },
};
