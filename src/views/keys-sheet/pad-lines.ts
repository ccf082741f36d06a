import { listedAct, listedActs, moreActs } from '../bench/pad-list.ts';
import { lineOf, padEnd, width, type Line } from '../drawing/index.ts';
import { keyOf, type Act, type KeyMap } from '../keys/key-map.ts';

/** Below this two columns don't fit side by side. */
export const twoColumns = 80;

/** What stands behind the list key, for a bare numeric pad. */
export function padLines(keys: KeyMap, columns: number): readonly Line[] {
  const word = (act: Act | null): string => {
    const binding = keys.find((each) => each.act === act);
    return binding?.short ?? binding?.says.split(':')[0] ?? '';
  };
  const first = [...listedActs(keys).map(word), 'more'];
  const list = keyOf(keys, 'list');
  return [
    lineOf(`Number pad: ${list} opens this list, ${list} 0 ${word(listedAct(keys, 0))}`),
    ...numbered(`${list} `, first, columns),
    ...(columns < twoColumns ? numbered(`${list} 9 `, moreActs.map(word), columns) : []),
  ];
}

/** `/ 1 first stroke   / 2 next section`: as many to a line as fit, one under the other. */
function numbered(before: string, words: readonly string[], columns: number): readonly Line[] {
  const told = words.map((word, index) => `${before}${index + 1} ${word}`);
  const cells = Math.max(...told.map(width)) + 2;
  const each = Math.max(1, Math.floor(columns / cells));
  return Array.from({ length: Math.ceil(told.length / each) }, (_, row) =>
    lineOf(
      `  ${told
        .slice(row * each, (row + 1) * each)
        .map((text) => padEnd(text, cells))
        .join('')}`.trimEnd(),
    ),
  );
}
