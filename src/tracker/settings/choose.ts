import { nearest } from '../trade/nearest.ts';
import { chooseKeys, type ActKeys } from './choose-keys.ts';
import { settings as table, standardSettings } from './settings.ts';
import { isTyped, typedSettings } from './typed-settings.ts';
import type { Setting, SettingName, SettingOutcome, Settings } from './settings.ts';

/** What the choice of a setting is checked against and this core doesn't know by itself. */
export type SettingKnowledge = {
  /** Whether the machine knows a zone by that name. */
  readonly isZone: (name: string) => boolean;
  /** Names of zones to offer for one that is none. */
  readonly zones: () => readonly string[];
  /** Every act with the keys it comes with. */
  readonly acts: readonly ActKeys[];
};

const entries = Object.entries(table) as readonly (readonly [SettingName, Setting])[];

/** Back to how it came, for every setting. */
const standardWord = 'standard';

/**
 * Sets one setting from a text as a person types it: `yes`, `24`, `Europe/Lisbon`, for keys `ready ;`. `standard` puts it
 * back. The name may be the one in the settings file, the one on the command line, or the label.
 */
export function chooseSetting(
  settings: Settings,
  name: string,
  text: string,
  knowledge: SettingKnowledge,
): SettingOutcome {
  const typed = text.trim();
  if (plain(name) === 'keys') {
    const chosen = chooseKeys(settings.keys, typed, knowledge.acts);
    return chosen.ok ? { ok: true, settings: { ...settings, keys: chosen.keys } } : chosen;
  }
  const named = entries.find(([own, { key, label }]) =>
    [own, key, label].some((each) => plain(each) === plain(name)),
  );
  if (named === undefined) {
    const names = [...entries.flatMap(([, { key, label }]) => [key, label]), 'keys'];
    return refuse(`Not set: there is no setting "${name}".`, nearest(name, names));
  }
  const [own, setting] = named;
  if (typed === '')
    return refuse(`Not set: no value was given for ${setting.label}. ${expected(setting)}`);
  const value =
    plain(typed) === standardWord ? standardSettings[own] : read(setting, typed, knowledge);
  if (typeof value === 'object') return value;
  return { ok: true, settings: { ...settings, [own]: value } };
}

/** A value as it is shown and typed. */
export const valueInWords = (value: string | number | boolean): string =>
  typeof value === 'boolean' ? (value ? 'yes' : 'no') : String(value);

type Value = string | number | boolean;

function read(
  setting: Setting,
  typed: string,
  knowledge: SettingKnowledge,
): Value | SettingOutcome {
  const { choices, label } = setting;
  if (choices === 'zone') return readZone(typed, knowledge);
  if (isTyped(choices))
    return (
      typedSettings[choices].keeps(typed) ??
      refuse(`Not set: ${label} can't be "${typed}". ${expected(setting)}`)
    );
  if (choices === 'keys') throw new Error(`${label} is not among the settings with one value`);
  const chosen = choices.find((choice) => wordsFor(choice).includes(plain(typed)));
  if (chosen !== undefined) return chosen;
  const words = choices.map(valueInWords);
  return refuse(
    `Not set: ${label} can't be "${typed}". ${expected(setting)}`,
    nearest(typed, words),
  );
}

/** What may be typed for one choice. */
function wordsFor(choice: Value): readonly string[] {
  if (choice === true) return ['yes', 'on', 'true', 'y'];
  if (choice === false) return ['no', 'off', 'false', 'n'];
  return [plain(String(choice))];
}

function expected({ choices }: Setting): string {
  if (choices === 'zone') return 'Write auto or a zone of the IANA list, such as Europe/Lisbon.';
  if (choices === 'keys') return 'Write an act and its keys: ready ;.';
  if (isTyped(choices)) return `Write ${typedSettings[choices].forms}.`;
  const words = choices.map(valueInWords);
  return `Write ${words.slice(0, -1).join(', ')} or ${words.at(-1) ?? ''}.`;
}

function readZone(typed: string, { isZone, zones }: SettingKnowledge): Value | SettingOutcome {
  if (plain(typed) === 'auto') return 'auto';
  if (isZone(typed)) {
    // A zone is known in any case of its letters; it is kept as the list writes it.
    return zones().find((zone) => zone.toLowerCase() === typed.toLowerCase()) ?? typed;
  }
  return refuse(
    `Not set: there is no zone "${typed}". ${expected(table.zone)}`,
    nearestZones(typed, zones()),
  );
}

/** Most people type the city alone. */
function nearestZones(typed: string, zones: readonly string[]): readonly string[] {
  const whole = nearest(typed, zones);
  if (whole.length > 0) return whole;
  const byCity = new Map(zones.map((zone) => [zone.slice(zone.lastIndexOf('/') + 1), zone]));
  return nearest(typed, byCity.keys()).map((city) => byCity.get(city) ?? city);
}

/** Case, spaces and dashes don't count: `far view`, `far-view` and `farView` are one name. */
const plain = (text: string): string => text.toLowerCase().replaceAll(/[\s_-]+/g, '');

const refuse = (says: string, near: readonly string[] = []): SettingOutcome => ({
  ok: false,
  says,
  nearest: near,
});
