/** An option as it is written in a command's file: `--with <piece...>`. */
export type Option = {
  /** Without its dashes. */
  readonly name: string;
  /** `<piece>`; null for one that takes no value. */
  readonly value: string | null;
  /** May be given more than once. */
  readonly many: boolean;
};

export function optionIn(flags: string): Option {
  const [, name = '', value = null] = /^--(\S+)(?: (.+))?$/.exec(flags) ?? [];
  return { name, value, many: value?.endsWith('...>') ?? false };
}

/** An argument as it is written there: `<piece>` must be there, `[piece]` may, `[text...]` may be many. */
export type Argument = { readonly name: string; readonly needed: boolean; readonly many: boolean };

export const argumentsIn = (takes: string): readonly Argument[] =>
  takes
    .split(' ')
    .filter((word) => word !== '')
    .map((word) => ({
      name: word.replaceAll(/[<>[\].]/g, ''),
      needed: word.startsWith('<'),
      many: word.includes('...'),
    }));
