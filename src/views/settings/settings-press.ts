import { actOf, keyMapWith } from '../keys/key-map.ts';
import type { Press } from '../keys/press.ts';
import { messageOf } from '../parts/message-lines.ts';
import { editField } from '../parts/text-field.ts';
import { fieldIn, withCursor } from '../parts/writing.ts';
import type { BenchPort } from '../port.ts';
import { said, type Step, type View } from '../screen.ts';
import type { SettingsState } from '../screens.ts';
import { settingRows, type SettingRow } from './setting-rows.ts';

type SettingsStep = Step<SettingsState>;

/** Up and down mark, left and right change; zone and keys are written. */
export function pressSettings(
  state: SettingsState,
  press: Press,
  view: View,
  port: BenchPort,
): SettingsStep {
  const rows = settingRows(view);
  const marked = rows[state.at];
  if (state.text !== undefined && marked !== undefined)
    return pressField(state, state.text, marked, press, port);
  const markAt = (at: number): SettingsStep => ({
    state: { ...state, at: (at + rows.length) % rows.length },
  });
  switch (press.name) {
    case 'up':
      return markAt(state.at - 1);
    case 'down':
      return markAt(state.at + 1);
    case 'home':
      return markAt(0);
    case 'end':
      return markAt(rows.length - 1);
    case 'escape':
      return { back: true };
    case 'left':
    case 'right':
    case 'enter':
    case 'space':
      return marked === undefined
        ? { state }
        : change(state, marked, press.name === 'left', view, port);
    default:
      return actOf(keyMapWith(view.snapshot.settings.keys), press.name) === 'settings'
        ? { back: true }
        : { state };
  }
}

/** The next choice or the one before it; what has no choices is opened for writing. */
function change(
  state: SettingsState,
  { name, label, choices }: SettingRow,
  isBackwards: boolean,
  view: View,
  port: BenchPort,
): SettingsStep {
  if (choices === null) {
    const value = name === 'keys' ? 'auto' : view.snapshot.settings[name];
    return { state: { ...state, text: value === 'auto' ? '' : String(value) } };
  }
  const { words, at } = choices;
  const next = words[(at + (isBackwards ? -1 : 1) + words.length) % words.length] ?? '';
  const reply = port.choose(name, next);
  return { state, message: reply.ok ? said(`${label}: ${next}`) : messageOf(reply) };
}

function pressField(
  state: SettingsState,
  text: string,
  { name, label }: SettingRow,
  press: Press,
  port: BenchPort,
): SettingsStep {
  switch (press.name) {
    case 'escape':
      return { state: closed(state) };
    case 'enter': {
      const reply = port.choose(name, text);
      // What was refused stays to be mended.
      return reply.ok
        ? { state: closed(state), message: said(`${label}: ${text.trim()}`) }
        : { state, message: messageOf(reply) };
    }
    default: {
      const edited = editField(fieldIn(text, state), press);
      return {
        state: edited === null ? state : withCursor({ ...state, text: edited.text }, edited),
      };
    }
  }
}

const closed = ({ is, at }: SettingsState): SettingsState => ({ is, at });
