import { parseArgs, type ParseArgsConfig } from 'node:util';
import { nearest } from '../../tracker/trade/index.ts';
import { failure, isFailure, type CommandFile, type Failure, type Given } from './command.ts';
import { everyCommand } from './globals.ts';
import { argumentsIn, optionIn, type Argument, type Option } from './usage.ts';

/** What became of the words after a command's name. */
export type Parsed = Given | 'help' | Failure;

/** Reads the words after a command's name by what the command takes. */
export function parseWords(name: string, file: CommandFile, words: readonly string[]): Parsed {
  const options = [...(file.options ?? []), ...everyCommand, ['--help', '']].map(([flags = '']) =>
    optionIn(flags),
  );
  const not = (says: string, near: readonly string[] = []): Failure => {
    const page = name === '' ? 'recoat --help' : `recoat ${name} --help`;
    return failure('usage', `Not understood: ${says} See: ${page}`, near);
  };
  const wrong = wrongOption(words, options);
  if (wrong !== null) return not(...wrong);
  const { values, positionals } = words.every(isSimple) ? simple(words) : split(words, options);
  if (values['help'] === true) return 'help';
  const filled = fill(argumentsIn(file.takes ?? ''), positionals.map(unshielded), not);
  if (isFailure(filled)) return filled;
  const given = new Map<string, unknown>([
    ...options.map(({ name: own }) => [own, values[own]] as const),
    ...filled,
  ]);
  return reader(given, name);
}

type Split = {
  readonly values: Readonly<Record<string, unknown>>;
  readonly positionals: readonly string[];
};

function split(words: readonly string[], options: readonly Option[]): Split {
  return parseArgs({
    args: words.map(shielded),
    options: Object.fromEntries(options.map((option) => [option.name, shapeOf(option)])),
    allowPositionals: true,
  });
}

/** What most commands are given needs no parser: Node would load its own, a twentieth of an empty start. */
const isSimple = (word: string): boolean => word === json || !word.startsWith('-');
const json = '--json';

const simple = (words: readonly string[]): Split => ({
  values: words.includes(json) ? { json: true } : {},
  positionals: words.filter((word) => word !== json),
});

type OptionShape = NonNullable<ParseArgsConfig['options']>[string];

const shapeOf = ({ value, many, name }: Option): OptionShape => ({
  type: value === null ? 'boolean' : 'string',
  multiple: many,
  ...(name === 'help' ? { short: 'h' } : {}),
});

/** A word such as `-5` is a figure, whether it makes sense or not; for the parser it would be an option. */
const shield = '\u0000';
const shielded = (word: string): string => (/^-[\d.]/.test(word) ? shield + word : word);
const unshielded = (word: string): string => (word.startsWith(shield) ? word.slice(1) : word);

/** What is wrong with the options, before anything is read from them; null if nothing is. */
function wrongOption(
  words: readonly string[],
  options: readonly Option[],
): readonly [says: string, near?: readonly string[]] | null {
  const end = words.indexOf('--');
  const looked = end < 0 ? words : words.slice(0, end);
  for (let at = 0; at < looked.length; at += 1) {
    const word = looked[at] ?? '';
    if (!/^-[^\d.]/.test(word) || word === '-h') continue;
    const [flag = '', value] = word.split(/=(.*)/s);
    const option = options.find(({ name }) => `--${name}` === flag);
    if (option === undefined) {
      const known = options.map(({ name }) => `--${name}`);
      return [`there is no option ${flag}.`, nearest(flag, known)];
    }
    if (option.value === null) {
      if (value !== undefined) return [`${flag} takes no value.`];
      continue;
    }
    const next = value ?? looked[at + 1];
    if (next === undefined || (value === undefined && /^-[^\d.]/.test(next)))
      return [`${flag} lacks its value: ${flag} ${option.value}.`];
    if (value === undefined) at += 1;
  }
  return null;
}

/** Gives the words to the arguments in their order; the last one may take as many as come. */
function fill(
  wanted: readonly Argument[],
  words: readonly string[],
  not: (says: string) => Failure,
): ReadonlyMap<string, unknown> | Failure {
  const filled = new Map<string, unknown>();
  for (const [index, { name, needed, many }] of wanted.entries()) {
    const own = many ? words.slice(index) : words[index];
    if (needed && (own === undefined || (own.length === 0 && many)))
      return not(`the ${name} is missing.`);
    filled.set(name, own);
  }
  const most = wanted.at(-1)?.many === true ? words.length : wanted.length;
  const extra = words[most];
  if (extra === undefined) return filled;
  return not(
    wanted.length === 0
      ? `it takes no "${extra}".`
      : `"${extra}" is a word too many; put quotes around a name of several words.`,
  );
}

function reader(values: ReadonlyMap<string, unknown>, command: string): Given {
  const find = (name: string): unknown => {
    if (!values.has(name)) throw new Error(`${command} takes no ${name}`);
    return values.get(name);
  };
  const maybe = (name: string): string | null => {
    const value = find(name);
    return typeof value === 'string' ? unshielded(value) : null;
  };
  const list = (name: string): readonly string[] => {
    const value = find(name);
    return Array.isArray(value) ? value.map((each) => unshielded(String(each))) : [];
  };
  return {
    maybe,
    list,
    word: (name) => {
      const value = maybe(name);
      if (value === null) throw new Error(`${command} has no ${name}`);
      return value;
    },
    sentence: (name) => list(name).join(' '),
    has: (flag) => find(flag) === true,
  };
}
