import { readDuration, type Milliseconds } from '../../tracker/time/index.ts';
import { fieldName, isGroup, unknownName } from './explain-issue.ts';
import { shown, type Problem } from './problem.ts';
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

type Fields = Record<string, unknown>;

function* windowRows(root: Fields): Generator<{ path: Path; row: Fields }> {
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

const entries = (value: unknown): readonly (readonly [string, Fields])[] =>
  isGroup(value) && !Array.isArray(value)
    ? Object.entries(value).flatMap(([name, inner]) =>
        isGroup(inner) ? [[name, inner] as const] : [],
      )
    : [];

function windowOrder(source: YamlSource, path: Path, row: Fields): readonly Problem[] {
  const problems: Problem[] = [];
  const gap = isGroup(row['keep off']) ? row['keep off'] : null;
  for (const wood of ['soft', 'hard'] as const) {
    const opens = timeOf(row['opens'], wood);
    const closes = timeOf(row['closes'], wood);
    if (opens !== null && closes !== null && closes <= opens) {
      problems.push(tooEarly(source, [...path, 'closes'], row['closes'], 'closing', 'its opening'));
      break;
    }
  }
  if (gap !== null) {
    const [from, until, opens] = [timeOf(gap['from']), timeOf(gap['until']), timeOf(row['opens'])];
    if (from !== null && until !== null && until <= from) {
      problems.push(
        tooEarly(
          source,
          [...path, 'keep off', 'until'],
          gap['until'],
          'end of the forbidden gap',
          'its beginning',
        ),
      );
    }
    if (from !== null && opens !== null && from <= opens) {
      problems.push(
        tooEarly(
          source,
          [...path, 'keep off', 'from'],
          gap['from'],
          'forbidden gap',
          'the opening before it',
        ),
      );
    }
    if (row['closes'] !== undefined) {
      problems.push(
        problemAt(
          source,
          [...path, 'closes'],
          row['closes'],
          'either a closing or a forbidden gap',
          {
            says: 'The window has both a closing and a forbidden gap.',
            todo: 'Take out "closes"; the gap closes it.',
          },
        ),
      );
    }
  }
  if (row['closes'] !== undefined && row['then'] === undefined) {
    problems.push(
      problemAt(source, [...path, 'closes'], row['closes'], '"then" beside "closes"', {
        says: 'The window closes, but not said is what to do after that.',
        todo: 'Add "then:", such as "then: scuff 320 first".',
      }),
    );
  }
  if (row['then'] !== undefined && row['closes'] === undefined) {
    problems.push(
      problemAt(source, [...path, 'then'], row['then'], '"closes" beside "then"', {
        says: 'It is said what to do after the closing, but the window never closes.',
        todo: 'Add "closes:" with a length of time, or take out "then".',
      }),
    );
  }
  return problems;
}

/** A written length of time, for a wood where it tells them apart; null for what is none (the schema says so). */
function timeOf(value: unknown, wood: 'soft' | 'hard' = 'hard'): Milliseconds | null {
  const words = isGroup(value) ? value[wood] : value;
  if (typeof words !== 'string') return null;
  const reading = readDuration(words);
  return reading.ok ? reading.ms : null;
}

function tooEarly(
  source: YamlSource,
  path: Path,
  value: unknown,
  what: string,
  before: string,
): Problem {
  return problemAt(source, path, value, `a time after ${before}`, {
    says: `The ${what} is not after ${before}.`,
    todo: `Write a longer time here, or a shorter one for ${before}.`,
  });
}

function problemAt(
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

function minutesOrder(source: YamlSource, path: Path, step: Fields): readonly Problem[] {
  const minutes = isGroup(step['minutes']) ? step['minutes'] : {};
  const [low, typical, high] = [minutes['low'], minutes['typical'], minutes['high']];
  const numbers = [low, typical, high].filter((each) => typeof each === 'number');
  const rising = numbers.every((each, index) => index === 0 || each >= (numbers[index - 1] ?? 0));
  if (rising) return [];
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
