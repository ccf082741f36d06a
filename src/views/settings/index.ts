import type { ScreenModule } from '../screen.ts';
import type { SettingsState } from '../screens.ts';
import { drawSettings } from './settings-draw.ts';
import { pressSettings } from './settings-press.ts';

export const settingsScreen: ScreenModule<SettingsState> = {
  draw: drawSettings,
  press: pressSettings,
  typing: ({ text }) => text !== undefined,
};
