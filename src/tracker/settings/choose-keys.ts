import { nearest } from '../trade/nearest.ts';
import type { Settings } from './settings.ts';

/** One act of the bench with the keys it comes with. */
export type ActKeys = { readonly act: string; readonly keys: readonly string[] };

export type KeysOutcome =
  | { readonly ok: true; readonly keys: Settings['keys'] }
  | { readonly ok: false; readonly says: string; readonly nearest: readonly string[] };

/** Names of keys that write nothing, and of two that can't stand for themselves between others. */
const keyNames: Readonly<Record<string, string>> = {
  enter: 'enter',
  return: 'enter',
  space: 'space',
  tab: 'tab',
  esc: 'escape',
  escape: 'escape',
  backspace: 'backspace',
  del: 'delete',
  delete: 'delete',
  up: 'up',
  down: 'down',
  left: 'left',
  right: 'right',
  home: 'home',
  end: 'end',
  comma: ',',
};

/** Keys that stay where they are: without them a bare numeric pad, or a closed screen, would be a dead end. */
const staying = new Set([
  ...['0', '1', '2', '3', '4', '5', '6', '7', '8', '9'],
  ...['enter', 'space', 'escape', 'tab', 'backspace', 'up', 'down', '/'],
]);

const example = 'Write an act and its keys, such as: ready ;';

/**
 * Gives an act other keys: `ready ;`, `ready ;,*`, `not yet standard`; `standard` alone puts all of them back.
 * Keys that stay with an act (Enter, digits) stay with it beside the new ones.
 */
export function chooseKeys(
  own: Settings['keys'],
  typed: string,
  acts: readonly ActKeys[],
): KeysOutcome {
  const words = typed.trim().toLowerCase();
  if (words === 'standard') return { ok: true, keys: {} };
  const chosen = acts
    .filter(({ act }) => words === act || words.startsWith(`${act} `))
    .toSorted((a, b) => b.act.length - a.act.length)[0];
  if (chosen === undefined) return unknownAct(words, acts);
  const rest = words.slice(chosen.act.length).trim();
  if (rest === 'standard') return putBack(own, chosen);
  const names = readKeys(rest);
  if (names.length === 0)
    return refuse(`Not set: no key was named for "${chosen.act}". ${example}, or: ready standard.`);
  for (const { name, wrote } of names) {
    if (name === null)
      return refuse(
        `Not set: "${wrote}" is no key. Name one character, or Del, left, right, Home, End.`,
        nearest(wrote, Object.keys(keyNames)),
      );
    const wrong = takenOrStaying(name, wrote, chosen, own, acts);
    if (wrong !== null) return wrong;
  }
  const kept = chosen.keys.filter((key) => staying.has(key));
  const keys = [...new Set([...names.flatMap(({ name }) => name ?? []), ...kept])];
  const isStandard =
    keys.length === chosen.keys.length && keys.every((key) => chosen.keys.includes(key));
  return { ok: true, keys: isStandard ? without(own, chosen.act) : { ...own, [chosen.act]: keys } };
}

/** A key that meanwhile went to another act can't come back. */
function putBack(own: Settings['keys'], { act, keys }: ActKeys): KeysOutcome {
  const others = without(own, act);
  for (const [owner, taken] of Object.entries(others)) {
    const lost = taken.find((key) => keys.includes(key));
    if (lost !== undefined)
      return refuse(
        `Not set: ${lost} is now the key for "${owner}". Write ${owner} standard first.`,
      );
  }
  return { ok: true, keys: others };
}

type KeyRead = { readonly name: string | null; readonly wrote: string };

/** Keys between commas or spaces. A comma alone is the key itself. */
function readKeys(text: string): readonly KeyRead[] {
  const parts = text === ',' ? ['comma'] : text.split(/[\s,]+/).filter((part) => part !== '');
  return parts.map((wrote) => ({ name: keyNames[wrote] ?? oneCharacter(wrote), wrote }));
}

/** A key that writes one printable character. */
const oneCharacter = (text: string): string | null =>
  [...text].length === 1 && !/[\p{C}\p{Z}\p{M}]/u.test(text) ? text : null;

function takenOrStaying(
  name: string,
  wrote: string,
  chosen: ActKeys,
  own: Settings['keys'],
  acts: readonly ActKeys[],
): KeysOutcome | null {
  if (staying.has(name) && !chosen.keys.includes(name))
    return refuse(`Not set: ${wrote} stays as it is. Take another key for "${chosen.act}".`);
  const owner = acts.find(
    ({ act, keys }) => act !== chosen.act && (own[act] ?? keys).includes(name),
  );
  return owner === undefined
    ? null
    : refuse(
        `Not set: ${wrote} is the key for "${owner.act}". Give that another first, or take another.`,
      );
}

/** The last word is taken as the keys, what stands before it as the act that was meant. */
function unknownAct(words: string, acts: readonly ActKeys[]): KeysOutcome {
  const meant = words.split(' ').length > 1 ? words.slice(0, words.lastIndexOf(' ')) : words;
  const names = acts.map(({ act }) => act);
  return refuse(
    meant === ''
      ? `Not set: no act was named. ${example}.`
      : `Not set: there is no act "${meant}". ${example}.`,
    nearest(meant, names),
  );
}

const without = (own: Settings['keys'], act: string): Settings['keys'] =>
  Object.fromEntries(Object.entries(own).filter(([each]) => each !== act));

const refuse = (says: string, near: readonly string[] = []): KeysOutcome => ({
  ok: false,
  says,
  nearest: near,
});
