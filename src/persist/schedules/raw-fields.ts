import { fieldName, isGroup } from './explain-issue.ts';
import { shown, type Problem } from './problem.ts';
import type { Path, YamlSource } from './yaml-source.ts';

/** Ways about a file's plain values, which may be anything: what is not as it should be is passed over. */

export type Fields = Record<string, unknown>;

/** Every row of every window of a file, wherever it stands. */
export function* windowRows(root: Fields): Generator<{ path: Path; row: Fields }> {
  for (const [id, product] of entries(root['products'])) {
    for (const family of ['coat', 'windows']) {
      for (const [name, row] of entries(product[family]))
        yield { path: ['products', id, family, name], row };
    }
  }
  for (const { path, step } of steps(root)) {
    for (const [name, row] of entries(step['windows']))
      yield { path: [...path, 'windows', name], row };
  }
}

export function steps(root: Fields): readonly { readonly path: Path; readonly step: Fields }[] {
  const list = root['steps'];
  if (!Array.isArray(list)) return [];
  return list.flatMap((step: unknown, index) =>
    isGroup(step) ? [{ path: ['steps', index], step }] : [],
  );
}

/** The groups of fields within a group, by name. */
export const entries = (value: unknown): readonly (readonly [string, Fields])[] =>
  isGroup(value) && !Array.isArray(value)
    ? Object.entries(value).flatMap(([name, inner]) =>
        isGroup(inner) ? [[name, inner] as const] : [],
      )
    : [];

export function problemAt(
  source: YamlSource,
  path: Path,
  value: unknown,
  expected: string,
  words: { readonly says: string; readonly todo: string },
): Problem {
  const place = source.placeOf(path);
  return {
    file: source.file,
    ...place,
    field: fieldName(source.value, path),
    found: shown(value),
    expected,
    ...words,
  };
}
