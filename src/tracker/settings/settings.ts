import type { TypedKind } from './typed-settings.ts';

/** One thing the user can choose, as data: screen, command and file check are made from it. */
export type Setting<Value extends string | number | boolean = string | number | boolean> = {
  readonly key: string;
  readonly label: string;
  /** One line on what it does. */
  readonly help: string;
  readonly choices: readonly Value[] | 'zone' | 'keys' | TypedKind;
  readonly standard: Value;
};

const setting = <const Value extends string | number | boolean>(
  key: string,
  label: string,
  help: string,
  choices: readonly Value[],
  standard: NoInfer<Value>,
): Setting<Value> & { readonly choices: readonly Value[] } => ({
  key,
  label,
  help,
  choices,
  standard,
});

export type TemperatureUnit = 'C' | 'F';

/**
 * Every setting but the key map, in the order shown. `auto` follows the machine's locale and zone.
 * A later setting is one more line here.
 */
export const settings = {
  helper: setting(
    'helper',
    'helper',
    'A second pair of hands: two pieces may be in hand at once.',
    [false, true],
    false,
  ),
  temperature: setting(
    'temperature',
    'temperature',
    'Unit in which conditions are read and shown.',
    ['auto', 'C', 'F'],
    'auto',
  ),
  air: setting(
    'air',
    'air counts',
    "Whether the readings of the shop's air may delay openings and bring closings forward; no leaves the label's figures.",
    [true, false],
    true,
  ),
  nightLow: {
    key: 'night-low',
    label: 'night low',
    help: 'How cold the shop usually gets at night: 12C, 54F, none; auto learns it from readings taken at night. It counts, by day too, where the last reading is over four hours old.',
    choices: 'night low',
    standard: 'auto',
  } satisfies Setting<string>,
  learnDrying: setting(
    'learn-drying',
    'learn drying',
    'Whether your checks may move when coats are ready to be tried; no leaves the label and the air.',
    [true, false],
    true,
  ),
  lengths: setting('lengths', 'lengths', 'Unit of sizes.', ['auto', 'mm', 'in'], 'auto'),
  clock: setting('clock', 'clock', '12 or 24 hours.', ['auto', '24', '12'], 'auto'),
  zone: {
    key: 'zone',
    label: 'time zone',
    help: "Zone of the shop, by its name in the IANA list; auto is the machine's.",
    choices: 'zone',
    standard: 'auto',
  } satisfies Setting<string>,
  desktop: setting(
    'desktop',
    'desktop pings',
    'Show pings as desktop notifications.',
    [true, false],
    true,
  ),
  bell: setting(
    'bell',
    'bell',
    'Ring the terminal bell: never, for loud pings, or for every ping.',
    ['every', 'loud', 'never'],
    'every',
  ),
  terminal: setting(
    'terminal',
    'terminal pings',
    "Send the terminal's own notification sequence: OSC 9, OSC 777 or OSC 99, where yours has one.",
    ['off', 'osc9', 'osc777', 'osc99'],
    'off',
  ),
  awake: setting(
    'awake',
    'stay awake',
    'Keep the machine awake while a window that spoils is running.',
    [true, false],
    true,
  ),
  quiet: {
    key: 'quiet-hours',
    label: 'quiet hours',
    help: 'Hold back till their end what loses nothing by waiting: 22:00-7:00, or none. What spoils pings all the same.',
    choices: 'quiet hours',
    standard: 'none',
  } satisfies Setting<string>,
  shopHours: {
    key: 'shop-hours',
    label: 'shop hours',
    help: 'When your hands are at work, every day: 8:00-18:00. The days that a piece stays on the bench are counted by it.',
    choices: 'shop hours',
    standard: '08:00-18:00',
  } satisfies Setting<string>,
  hook: {
    key: 'ping-hook',
    label: 'ping hook',
    help: 'A program that gets every ping as JSON on its standard input, to send it on: to a phone, a lamp. Or none.',
    choices: 'ping hook',
    standard: 'none',
  } satisfies Setting<string>,
  keeper: setting(
    'keeper',
    'keeper',
    'Go on pinging in the background while no screen is open; ask is to be asked when leaving.',
    ['ask', 'yes', 'no'],
    'ask',
  ),
  farView: setting(
    'far-view',
    'far view',
    'Minutes untouched until the large letters come; 0 is never.',
    [1, 0, 2, 5, 10],
    1,
  ),
  glyphs: setting(
    'glyphs',
    'glyphs',
    'Bars and figures in block characters or in plain ASCII.',
    ['auto', 'blocks', 'ascii'],
    'auto',
  ),
  colour: setting(
    'colour',
    'colour',
    'Ground of your terminal; none leaves words and shapes.',
    ['auto', 'dark', 'light', '16', 'none'],
    'auto',
  ),
} as const;

export type SettingName = keyof typeof settings;

type ValueOf<Entry> = Entry extends { readonly choices: readonly (infer Value)[] } ? Value : string;

/** The user's choices; every setting has a value. */
export type Settings = { readonly [Name in SettingName]: ValueOf<(typeof settings)[Name]> } & {
  /** Keys moved by the user: act name -> keys, e.g. `{'ready': ['w']}`. */
  readonly keys: Readonly<Record<string, readonly string[]>>;
};

export const standardSettings: Settings = {
  ...(Object.fromEntries(
    Object.entries(settings).map(([name, entry]) => [name, entry.standard]),
  ) as {
    readonly [Name in SettingName]: ValueOf<(typeof settings)[Name]>;
  }),
  keys: {},
};

/** What became of setting one value from a text. */
export type SettingOutcome =
  | { readonly ok: true; readonly settings: Settings }
  | { readonly ok: false; readonly says: string; readonly nearest: readonly string[] };
