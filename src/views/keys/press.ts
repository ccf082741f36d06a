/** One key press as screens see it. */
export type Press = {
  /** `enter`, `space`, `tab`, `escape`, `backspace`, `delete`, `up`, `down`, `left`, `right`, `page up`, `page down`, `home`, `end`, or the character in lower case. */
  readonly name: string;
  /** The character as typed; empty for keys that write nothing. */
  readonly text: string;
};

/** The part of Ink's key object that tells keys apart. */
export type KeyFlags = {
  readonly upArrow?: boolean;
  readonly downArrow?: boolean;
  readonly leftArrow?: boolean;
  readonly rightArrow?: boolean;
  readonly pageUp?: boolean;
  readonly pageDown?: boolean;
  readonly home?: boolean;
  readonly end?: boolean;
  readonly return?: boolean;
  readonly escape?: boolean;
  readonly tab?: boolean;
  readonly backspace?: boolean;
  readonly delete?: boolean;
  readonly ctrl?: boolean;
  readonly meta?: boolean;
  readonly shift?: boolean;
};

const flagNames: readonly (readonly [keyof KeyFlags, string])[] = [
  ['upArrow', 'up'],
  ['downArrow', 'down'],
  ['leftArrow', 'left'],
  ['rightArrow', 'right'],
  ['pageUp', 'page up'],
  ['pageDown', 'page down'],
  ['home', 'home'],
  ['end', 'end'],
  ['return', 'enter'],
  ['escape', 'escape'],
  ['tab', 'tab'],
  ['backspace', 'backspace'],
  ['delete', 'delete'],
];

const characterNames: Readonly<Record<string, string>> = {
  ' ': 'space',
  '\r': 'enter',
  '\n': 'enter',
  '\t': 'tab',
};

/**
 * The presses in one delivery of input. The terminal hands over several characters at once when keys come fast:
 * a caller that must not take them (a leaning glove) sees more than one.
 */
export function readPresses(input: string, key: KeyFlags): readonly Press[] {
  const flag = flagNames.find(([name]) => key[name] === true);
  if (flag !== undefined) return [{ name: flag[1], text: '' }];
  if (key.ctrl === true || key.meta === true) return [];
  return [...input].map((character) => ({
    name: characterNames[character] ?? character.toLowerCase(),
    text: characterNames[character] === undefined || character === ' ' ? character : '',
  }));
}
