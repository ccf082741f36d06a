import leven from 'leven';

/**
 * Names that were meant perhaps, nearest first, at most `most` of them; none if nothing is near.
 * A name is near if few letters differ or two are swapped (letter case and the choice of space, dash or underscore do not count),
 * or if one of its words begins with what was typed.
 */
export function nearest(typed: string, names: Iterable<string>, most = 3): readonly string[] {
  const wanted = plain(typed);
  if (wanted === '') return [];
  const ranked: { readonly name: string; readonly rank: number }[] = [];
  for (const name of new Set(names)) {
    const rank = distance(wanted, plain(name));
    if (rank !== null) ranked.push({ name, rank });
  }
  return ranked
    .sort((one, other) => one.rank - other.rank || (one.name < other.name ? -1 : 1))
    .slice(0, most)
    .map(({ name }) => name);
}

const plain = (text: string): string =>
  text
    .trim()
    .toLowerCase()
    .replaceAll(/[\s_-]+/g, ' ');

/** Two letters in five may differ, at least one, and never more than four. */
const allowance = (length: number): number => Math.min(4, Math.max(1, Math.floor(length * 0.4)));

/** Whether one pair of neighbouring letters was typed the wrong way round: one slip, though two letters differ. */
function isSwap(wanted: string, name: string): boolean {
  if (wanted.length !== name.length) return false;
  const at = [...wanted].findIndex((letter, index) => letter !== name[index]);
  const swapped = `${wanted.slice(0, at)}${wanted.charAt(at + 1)}${wanted.charAt(at)}${wanted.slice(at + 2)}`;
  return at >= 0 && swapped === name;
}

function distance(wanted: string, name: string): number | null {
  const words = name.split(' ');
  const begins =
    wanted.length >= 2 &&
    (name.startsWith(wanted) || words.some((word) => word.startsWith(wanted)));
  // What begins alike comes after one slip of the finger, before two.
  if (begins) return wanted === name ? 0 : 1.5;
  if (isSwap(wanted, name)) return 1;
  const limit = allowance(Math.max(wanted.length, name.length));
  const letters = leven(wanted, name, { maxDistance: limit + 1 });
  return letters <= limit ? letters : null;
}
