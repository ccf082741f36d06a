/** What a key can do to the row that is selected. */
export type RowAct =
  | 'pick up'
  | 'next stamp'
  | 'ready'
  | 'not yet'
  | 'trouble'
  | 'first stroke'
  | 'next section'
  | 'done'
  | 'other stamp'
  | 'earlier'
  | 'later'
  | 'take along'
  | 'next part'
  | 'open piece'
  | 'hold'
  | 'job card'
  | 'note'
  | 'off the bench'
  | 'remove';

/** One thing a key can do on the bench, with all that is said of it: matching, help line and keys sheet come from this. */
export type Act =
  | RowAct
  | 'all keys'
  | 'list'
  | 'add'
  | 'odd timer'
  | 'pots'
  | 'conditions'
  | 'minutes'
  | 'overnight'
  | 'leave'
  | 'take back'
  | 'bring back'
  | 'back to'
  | 'past pieces'
  | 'pings'
  | 'settings'
  | 'up'
  | 'down';

export type Binding = {
  readonly act: Act;
  /** Names of presses. */
  readonly keys: readonly string[];
  /** On the keys sheet. */
  readonly says: string;
  /** On the help line, if it is ever there. */
  readonly short?: string;
  /** Its number in the list behind `/`, for the bare numeric pad. */
  readonly listed?: number;
};

const bind = (
  act: Act,
  keys: readonly string[],
  says: string,
  extra: Partial<Binding> = {},
): Binding => ({
  act,
  keys,
  says,
  ...extra,
});

/** The key map as it comes. A person's own keys take the place of a binding's. */
export const standardKeys: readonly Binding[] = [
  bind('pick up', ['enter'], 'pick up, put down', { short: 'pick up, put down' }),
  bind('next stamp', ['space', '+'], 'next stamp, as the foot line names it', {
    short: 'next stamp',
  }),
  bind('ready', ['r', '*'], 'ready', { short: 'ready' }),
  bind('not yet', ['n', '-'], 'not yet', { short: 'not yet' }),
  bind('trouble', ['t'], 'trouble', { short: 'trouble', listed: 4 }),
  bind('first stroke', ['f'], 'first stroke on', { listed: 1 }),
  bind('next section', ['s'], 'next section', { listed: 2 }),
  bind('done', ['d'], 'done', { listed: 3 }),
  bind('other stamp', [';'], 'another stamp: topped up, covered, turned, clamps off', {
    listed: 0,
  }),
  bind('earlier', [','], 'earlier: it happened before I pressed', { short: 'earlier', listed: 5 }),
  bind('later', ['.'], 'later', { listed: 6 }),
  bind('take back', ['0', 'backspace'], 'take back'),
  bind('bring back', ['g'], 'bring back', { listed: 7 }),
  bind('back to', ['b'], 'back to what I was at', { short: 'back to', listed: 8 }),
  bind('take along', ['e'], 'take this piece along into the same go, or out of it', {
    short: 'take along',
  }),
  bind('all keys', ['k'], 'all keys', { short: 'all keys' }),
  bind('list', ['/'], 'list of keys, for the numeric pad', { listed: 9 }),
  bind('next part', ['tab'], 'its next part'),
  bind('up', ['up'], 'the piece above'),
  bind('down', ['down'], 'the piece below'),
  bind('open piece', ['p', 'right'], 'open the piece: its steps and windows'),
  bind('add', ['a'], 'add a piece'),
  bind('odd timer', ['o'], 'odd timer'),
  bind('pots', ['l'], 'pots: mix one, wash one out'),
  bind('hold', ['h'], 'hold, or lift it'),
  bind('conditions', ['c'], 'conditions'),
  bind('minutes', ['m'], 'minutes: actual against estimated'),
  bind('job card', ['j'], 'job card'),
  bind('overnight', ['v'], 'overnight: shut up shop'),
  bind('leave', ['q'], 'leave'),
  bind('note', ['w'], 'write a note'),
  bind('past pieces', ['z'], 'past pieces'),
  bind('pings', ['i'], 'pings: what it did last night'),
  bind('settings', ['u'], 'settings'),
  bind('off the bench', ['y'], 'take the piece off the bench'),
  bind('remove', ['x', 'delete'], 'remove the piece'),
];

export type KeyMap = readonly Binding[];

/** The key map with a person's own keys: act name to press names. A key taken by one act is lost to the others. */
export function keyMapWith(own: Readonly<Record<string, readonly string[]>>): KeyMap {
  let map = knownMaps.get(own);
  if (map === undefined) {
    const taken = new Set(Object.values(own).flat());
    map = standardKeys.map((binding) => ({
      ...binding,
      keys: own[binding.act] ?? binding.keys.filter((key) => !taken.has(key)),
    }));
    knownMaps.set(own, map);
  }
  return map;
}

/** Every frame asks several times; settings are new objects when they change. */
const knownMaps = new WeakMap<object, KeyMap>();

export const actOf = (map: KeyMap, press: string): Act | null =>
  map.find((binding) => binding.keys.includes(press))?.act ?? null;

const keyWords: Readonly<Record<string, string>> = {
  enter: 'Enter',
  space: 'Space',
  tab: 'Tab',
  backspace: 'Backspace',
  delete: 'Del',
  up: 'up',
  down: 'down',
  left: 'left',
  right: 'right',
  escape: 'Esc',
};

/** A key's name in plain words. */
export const keyWord = (name: string): string => keyWords[name] ?? name;

/** The first key of an act, as it is written; empty if it has none. */
export const keyOf = (map: KeyMap, act: Act): string => {
  const first = map.find((binding) => binding.act === act)?.keys[0];
  return first === undefined ? '' : keyWord(first);
};

/** `Enter pick up, put down  r ready ...`: as many as fit, in the order given. */
export function helpLine(
  map: KeyMap,
  acts: readonly Act[],
  cells: number,
  words: Partial<Record<Act, string>> = {},
): string {
  let line = '';
  for (const act of acts) {
    const binding = map.find((each) => each.act === act);
    const key = keyOf(map, act);
    if (binding === undefined || key === '') continue;
    const next = `${line === '' ? '' : '  '}${key} ${words[act] ?? binding.short ?? binding.says}`;
    if (line.length + next.length > cells) break;
    line += next;
  }
  return line;
}
