import { nearest } from '../../tracker/trade/index.ts';
import { failure, isFailure, type Failure } from '../line/command.ts';

/** Something that can be named on the command line. */
export type Named<Thing> = {
  readonly thing: Thing;
  /** What it is called where several have to be told apart, and offered where none is found. */
  readonly called: string;
  /** Names that mean it when they are typed whole. */
  readonly names: readonly string[];
  /** The name whose beginning will do. */
  readonly name: string;
};

/** How a name that is none is refused. */
export type Sought = {
  /** The beginning of the refusal: `Not picked up`. */
  readonly not: string;
  /** What kind of thing was named: `step`. */
  readonly what: string;
  /** Whose it would be: `3 Beech stool`. */
  readonly whose?: string;
};

/**
 * Finds the one thing that is meant: by a whole name, else by the only name that begins so. Case doesn't count, and a
 * dash is as good as a space.
 */
export function match<Thing>(
  typed: string,
  things: readonly Named<Thing>[],
  { not, what, whose }: Sought,
): { readonly found: Thing } | (Failure & { readonly several: boolean }) {
  const wanted = plain(typed);
  const whole = things.filter(({ names }) => names.some((name) => plain(name) === wanted));
  const begun = wanted === '' ? [] : things.filter(({ name }) => plain(name).startsWith(wanted));
  const meant = whole.length > 0 ? whole : begun;
  if (meant.length > 1) {
    const says = `${not}: "${typed}" could be ${meant.length} ${what}s. Write more of the name, or the number.`;
    return {
      ...failure(
        'unknown',
        says,
        meant.map(({ called }) => called),
      ),
      several: true,
    };
  }
  const [only] = meant;
  if (only !== undefined) return { found: only.thing };
  const lacks = whose === undefined ? 'there is no' : `${whose} has no`;
  const says = `${not}: ${lacks} ${what} "${typed}".`;
  return { ...failure('unknown', says, offered(typed, things)), several: false };
}

/** Finds the one thing that is meant, as `match` does, where it doesn't matter how many others it could have been. */
export function findNamed<Thing extends object>(
  typed: string,
  things: readonly Named<Thing>[],
  sought: Sought,
): Thing | Failure {
  const found = match(typed, things, sought);
  return isFailure(found) ? found : found.found;
}

/** What a file names by an id and a name, as products are. */
export const namedById = <Thing extends { readonly id: string; readonly name: string }>(
  thing: Thing,
): Named<Thing> => ({
  thing,
  called: thing.id,
  names: [thing.id, thing.name],
  name: thing.name,
});

/** What it could have been, as it is called. */
function offered<Thing>(typed: string, things: readonly Named<Thing>[]): readonly string[] {
  const near = nearest(
    typed,
    things.map(({ name }) => name),
  );
  return near.flatMap((name) => things.find((each) => each.name === name)?.called ?? []);
}

const plain = (text: string): string =>
  text
    .trim()
    .toLowerCase()
    .replaceAll(/[\s_-]+/g, ' ');
