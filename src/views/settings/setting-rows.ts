import {
  settings as table,
  valueInWords,
  type Setting,
  type SettingName,
} from '../../tracker/settings/index.ts';
import { keyWord } from '../keys/key-map.ts';
import type { View } from '../screen.ts';

/** One line of the list of settings. */
export type SettingRow = {
  readonly name: SettingName | 'keys';
  readonly label: string;
  readonly help: string;
  /** As it is shown; `auto` with what it comes to here. */
  readonly value: string;
  /** What left and right go through, and where they are; null where it is typed. */
  readonly choices: { readonly words: readonly string[]; readonly at: number } | null;
};

const entries = Object.entries(table) as readonly (readonly [SettingName, Setting])[];

/** All settings with their present values, from the table of settings. */
export const settingRows = (view: View): readonly SettingRow[] => [
  ...entries.map(([name, { label, help, choices }]): SettingRow => {
    const value = view.snapshot.settings[name];
    return {
      name,
      label,
      help,
      value: value === 'auto' ? `auto: ${autoHere(name, view)}` : valueInWords(value),
      choices:
        typeof choices === 'string'
          ? null
          : { words: choices.map(valueInWords), at: choices.indexOf(value) },
    };
  }),
  {
    name: 'keys',
    label: 'keys',
    help: 'Other keys for an act: "ready l", "ready l,*", "ready standard". The acts are named on the keys sheet.',
    value: ownKeys(view),
    choices: null,
  },
];

/** What `auto` comes to in this shop and on this terminal. */
function autoHere(name: SettingName, { snapshot, theme }: View): string {
  const { shop } = snapshot;
  const here: Partial<Record<SettingName, string>> = {
    temperature: shop.temperature,
    lengths: shop.lengths,
    clock: shop.hours,
    zone: shop.zone === 'auto' ? "the machine's" : shop.zone,
    nightLow: 'learned',
    glyphs: theme.glyphs,
    colour: theme.colour,
  };
  return here[name] ?? 'as the machine says';
}

function ownKeys({ snapshot }: View): string {
  const own = Object.entries(snapshot.settings.keys);
  if (own.length === 0) return 'as they come';
  return own.map(([act, keys]) => `${act} ${keys.map(keyWord).join(' ')}`).join('; ');
}
