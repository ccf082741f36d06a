import { scrolledPage } from '../page.ts';
import type { ScreenModule } from '../screen.ts';
import type { ShutState } from '../screens.ts';
import { shutPage } from './shut-draw.ts';
import { pressShut } from './shut-press.ts';

export const shutScreen: ScreenModule<ShutState> = {
  draw: (state, view) => ({ lines: scrolledPage(shutPage(state, view), view) }),
  press: pressShut,
  typing: ({ text }) => text !== undefined,
};
