import { settingKnowledge } from '../shell/port.ts';
import {
  chooseSetting,
  settings as table,
  valueInWords,
  type Setting,
  type SettingName,
  type Settings,
} from '../tracker/settings/index.ts';
import type { SetJson, SettingsJson } from './json-shapes/index.ts';
import { failure, isFailure, type Answer, type CommandFile, type Failure } from './line/command.ts';
import { openToRead, storeFailure } from './line/look.ts';
import { withStore } from './line/record.ts';
import type { Room } from './line/room.ts';
import { findNamed } from './names/match.ts';
import { inColumns } from './text/columns.ts';

export const settings: CommandFile = {
  takes: '[name] [value...]',
  help: 'Alone it lists all; with a name it shows one; with a value it sets it. The word standard puts it back. Keys: settings keys ready =',
  run: async (room, given) => {
    const name = given.maybe('name');
    const value = given.sentence('value');
    if (name !== null && value !== '') return choose(room, name, value);
    const opened = await openToRead(room);
    if (isFailure(opened)) return opened;
    if (name === null) return listed(entries, opened.settings);
    const found = entryCalled(name, 'Not shown');
    return isFailure(found) ? found : listed([found], opened.settings);
  },
};

type Entry = { readonly own: SettingName | null; readonly setting: Setting };

const entries: readonly Entry[] = Object.entries(table).map(([own, setting]) => ({
  own: own as SettingName,
  setting,
}));

function entryCalled(name: string, not: string): Entry | Failure {
  return findNamed(
    name,
    [...entries, keysEntry].map((entry) => ({
      thing: entry,
      called: entry.setting.key,
      names: [entry.setting.key, entry.setting.label, entry.own ?? 'keys'],
      name: entry.setting.key,
    })),
    { not, what: 'setting' },
  );
}

/** Keys have no single value; they are listed by themselves. */
const keysEntry: Entry = {
  own: null,
  setting: {
    key: 'keys',
    label: 'keys',
    help: 'Keys moved by you: settings keys ready =',
    choices: 'keys',
    standard: '',
  },
};

function listed(shown: readonly Entry[], values: Settings): Answer {
  const withValue = shown.flatMap(({ own, setting }) =>
    own === null ? [] : [{ ...setting, value: values[own] }],
  );
  const moved = Object.entries(values.keys);
  return {
    lines: () => [
      ...inColumns(
        withValue.map(({ key, value, choices, help }) => [
          key,
          valueInWords(value),
          typeof choices === 'string' ? help : `${choices.map(valueInWords).join(', ')}. ${help}`,
        ]),
      ),
      ...moved.map(([act, keys]) => `keys  ${act}: ${keys.join(' ')}`),
      ...(withValue.length === 0 && moved.length === 0 ? ['keys  all standard'] : []),
    ],
    json: (): SettingsJson => ({
      settings: withValue.map(({ key, value, standard, choices, help }) => ({
        name: key,
        value,
        standard,
        choices: typeof choices === 'string' ? null : choices,
        help,
      })),
      keys: values.keys,
    }),
  };
}

async function choose(room: Room, name: string, value: string): Promise<Answer | Failure> {
  const entry = entryCalled(name, 'Not set');
  if (isFailure(entry)) return entry;
  const { key } = entry.setting;
  return withStore(room, (store) => {
    const result = store.changeSettings<Answer | Failure>((current) => {
      const outcome = chooseSetting(current, key, value, settingKnowledge);
      if (!outcome.ok)
        return { settings: null, result: failure('usage', outcome.says, outcome.nearest) };
      return { settings: outcome.settings, result: wasSet(entry, current, outcome.settings) };
    });
    return result.ok ? result.value : storeFailure(result.problem);
  });
}

function wasSet({ own, setting }: Entry, before: Settings, after: Settings): Answer {
  const { key } = setting;
  const value = own === null ? null : after[own];
  const isNew = own === null ? before.keys !== after.keys : before[own] !== value;
  return {
    lines: () => [
      !isNew
        ? `${key} was so already`
        : value === null
          ? `${key} set`
          : `${key}: ${valueInWords(value)}`,
    ],
    json: (): SetJson => ({ set: key, value }),
  };
}
