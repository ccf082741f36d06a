import { nearest } from '../../tracker/trade/index.ts';
import {
  isTyped,
  settings as table,
  standardSettings,
  typedSettings,
  type Setting,
  type Settings,
} from '../../tracker/settings/index.ts';
import { isRecord } from '../file/is-record.ts';
import type { Notice } from '../result.ts';

export type SettingsReading = {
  readonly settings: Settings;
  /** Entries that were not taken: unknown names and wrong values. They stay in the file as they are. */
  readonly kept: Readonly<Record<string, unknown>>;
  readonly notices: readonly Notice[];
};

const entries: readonly (readonly [string, Setting])[] = Object.entries(table);
const names = [...entries.map(([name]) => name), 'keys'];

/**
 * Takes settings one by one. What is not there has its standard value; a wrong value is refused, with the standard
 * value in its place; a name that is none is passed over. Both are told, with the nearest word that would do.
 *
 * @param stored as it stands in the file
 * @param file path to name in notices
 */
export function readSettings(
  stored: Readonly<Record<string, unknown>>,
  file: string,
): SettingsReading {
  const taken: Record<string, unknown> = { ...standardSettings };
  const kept: [string, unknown][] = [];
  const notices: Notice[] = [];
  const passOver = (name: string, says: string, todo: string) => {
    kept.push([name, stored[name]]);
    notices.push({ file, says: `${file}: ${says}`, todo });
  };
  for (const name of Object.keys(stored)) {
    const value = stored[name];
    if (!names.includes(name)) {
      passOver(
        name,
        `"${name}" is no setting.`,
        advice(nearest(name, names, 1), 'It was left there and not used.'),
      );
      continue;
    }
    const wrong = wrongWith(name, value);
    if (wrong === null) taken[name] = value;
    else
      passOver(
        name,
        `"${name}" is ${JSON.stringify(value)}; ${wrong.expected}.`,
        advice(wrong.near, 'The standard is used.'),
      );
  }
  // A file may name an entry as it likes, also `__proto__`: so it stays an entry.
  return { settings: taken as Settings, kept: Object.fromEntries(kept), notices };
}

/** What goes into the file: the settings, and beside them what was there and not taken. */
export function storedSettings(
  settings: Settings,
  before: SettingsReading,
): Record<string, unknown> {
  const changed = Object.entries(settings).filter(
    ([name, value]) =>
      !Object.hasOwn(before.kept, name) || value !== before.settings[name as keyof Settings],
  );
  return { ...before.kept, ...Object.fromEntries(changed) };
}

const advice = (near: readonly string[], otherwise: string): string =>
  near.length === 0 ? otherwise : `${otherwise} Nearest: ${near.join(', ')}.`;

type Wrong = { readonly expected: string; readonly near: readonly string[] };

function wrongWith(name: string, value: unknown): Wrong | null {
  if (name === 'keys') {
    return isKeyMap(value)
      ? null
      : { expected: 'expected lists of keys by the name of the act', near: [] };
  }
  const setting = entries.find(([known]) => known === name)?.[1];
  if (setting === undefined || setting.choices === 'keys') return null;
  if (setting.choices === 'zone') return wrongZone(value);
  if (isTyped(setting.choices)) {
    const { keeps, forms } = typedSettings[setting.choices];
    return typeof value === 'string' && keeps(value) !== null
      ? null
      : { expected: `expected ${forms}`, near: [] };
  }
  if (setting.choices.some((choice) => choice === value)) return null;
  const words = setting.choices.map((choice) => JSON.stringify(choice));
  const near = typeof value === 'string' ? nearest(value, setting.choices.map(String)) : [];
  return { expected: `expected ${words.join(', ')}`, near };
}

const isKeyMap = (value: unknown): boolean =>
  isRecord(value) &&
  Object.values(value).every(
    (keys) => Array.isArray(keys) && keys.every((key) => typeof key === 'string'),
  );

/** Which zones there are is the machine's to say, so a file from another machine is asked about here. */
function wrongZone(value: unknown): Wrong | null {
  if (value === 'auto') return null;
  const expected = 'expected auto or a zone of the IANA list, such as Europe/Lisbon';
  if (typeof value !== 'string') return { expected, near: [] };
  try {
    new Intl.DateTimeFormat('en', { timeZone: value });
    return null;
  } catch {
    return { expected, near: nearest(value, Intl.supportedValuesOf('timeZone')) };
  }
}
