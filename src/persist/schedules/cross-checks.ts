import { isGroup, unknownName } from './explain-issue.ts';
import type { Problem } from './problem.ts';
import { entries, problemAt, steps, windowRows, type Fields } from './raw-fields.ts';
import { windowOrder } from './window-checks.ts';
import type { Path, YamlSource } from './yaml-source.ts';

/**
 * What a schema can't see because it lies between fields. These checks read the plain values, so that they speak even
 * where the schema has found other things wrong, and all problems of a file come at once.
 */
export function crossChecks(source: YamlSource): readonly Problem[] {
  const root = source.value;
  if (!isGroup(root)) return [];
  const rows = [...windowRows(root)];
  return [
    ...rows.flatMap(({ path, row }) => windowOrder(source, path, row)),
    ...sourceNames(source, root),
    ...steps(root).flatMap(({ path, step }) => minutesOrder(source, path, step)),
    ...doubledIds(source, root),
  ];
}

function minutesOrder(source: YamlSource, path: Path, step: Fields): readonly Problem[] {
  const minutes = isGroup(step['minutes']) ? step['minutes'] : {};
  const [low, typical, high] = [minutes['low'], minutes['typical'], minutes['high']];
  const numbers = [low, typical, high].filter((each) => typeof each === 'number');
  const isRising = numbers.every((each, index) => index === 0 || each >= (numbers[index - 1] ?? 0));
  if (isRising) return [];
  return [
    problemAt(
      source,
      [...path, 'minutes'],
      numbers.join(', '),
      'low, typical and high in rising order',
      {
        says: `The minutes don't rise from low over typical to high: ${numbers.join(', ')}.`,
        todo: 'Write the smallest as low and the largest as high.',
      },
    ),
  ];
}

function doubledIds(source: YamlSource, root: Fields): readonly Problem[] {
  const seen = new Map<string, number>();
  const problems: Problem[] = [];
  for (const { path, step } of steps(root)) {
    const id = step['id'];
    if (typeof id !== 'string') continue;
    const first = seen.get(id);
    if (first === undefined) {
      seen.set(id, source.placeOf([...path, 'id']).line);
      continue;
    }
    problems.push(
      problemAt(source, [...path, 'id'], id, 'an id of its own for every step', {
        says: `The id "${id}" is already that of the step in line ${first}.`,
        todo: `Give one of them another id, such as ${id}-2.`,
      }),
    );
  }
  return problems;
}

/** Every `source` names an entry of `sources`. */
function sourceNames(source: YamlSource, root: Fields): readonly Problem[] {
  const known = isGroup(root['sources']) ? Object.keys(root['sources']) : [];
  const named: { readonly path: Path; readonly value: unknown }[] = [
    { path: ['source'], value: root['source'] },
    ...entries(root['products']).map(([id, product]) => ({
      path: ['products', id, 'source'],
      value: product['source'],
    })),
    ...entries(root['products']).map(([id, { 'needs air': air }]) => ({
      path: ['products', id, 'needs air', 'source'],
      value: isGroup(air) ? air['source'] : undefined,
    })),
  ];
  for (const { path, row } of windowRows(root)) {
    const value = row['source'];
    if (isGroup(value)) {
      for (const [end, name] of Object.entries(value))
        named.push({ path: [...path, 'source', end], value: name });
    } else named.push({ path: [...path, 'source'], value });
  }
  return named
    .filter(({ value }) => typeof value === 'string' && !known.includes(value))
    .map(({ path, value }) => unknownName(source, path, value, 'a source listed here', known));
}
