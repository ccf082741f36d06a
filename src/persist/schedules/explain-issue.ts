import type * as z from 'zod/mini';
import { nearest } from '../../tracker/trade/index.ts';
import { listedFields } from './fields.ts';
import { shown, type Problem } from './problem.ts';
import type { Path, Place, YamlSource } from './yaml-source.ts';

type Issue = z.core.$ZodIssue;

/** Puts what the schema found wrong into words, with its line and the names that were meant perhaps. */
export function explainIssue(
  issue: Issue,
  source: YamlSource,
  above: Path = [],
): readonly Problem[] {
  const path = [...above, ...issue.path];
  const value = valueAt(source.value, path);
  if (issue.code === 'unrecognized_keys') {
    return issue.keys.map((key) => unknownField(source, path, key, issue.message));
  }
  if (issue.code === 'invalid_union') {
    const meant = branchMeant(issue.errors, value);
    if (meant.length > 0) return meant.flatMap((inner) => explainIssue(inner, source, path));
  }
  if (issue.code === 'invalid_value' && value !== undefined) {
    return [unknownName(source, path, value, issue.message, issue.values.map(String))];
  }
  const expected =
    issue.code === 'invalid_value'
      ? `${issue.message}: ${listed(issue.values.map(String))}`
      : issue.message;
  return [
    value === undefined ? missing(source, path, expected) : wrong(source, path, value, expected),
  ];
}

/** Of several forms a field may have, the one that was written: a group of fields, or the plain one that stands first. */
function branchMeant(branches: readonly (readonly Issue[])[], value: unknown): readonly Issue[] {
  const isGroup = value !== null && typeof value === 'object';
  const inside = branches.find((issues) =>
    issues.every((issue) => issue.path.length > 0 || issue.code === 'unrecognized_keys'),
  );
  return (isGroup ? inside : undefined) ?? branches[0] ?? [];
}

function unknownField(source: YamlSource, path: Path, key: string, list: string): Problem {
  const { what, names } = listedFields(list);
  const brace = key.search(/[:{[]/);
  if (brace > 0) return uncolonned(source, path, key, key.slice(0, brace).trim());
  const close = nearest(key, names);
  const hint = valueAt(source.value, [...path, key]) === null ? ` ${commaHint}` : '';
  return {
    ...at(source, [...path, key], source.placeOfName([...path, key])),
    found: key,
    expected: list,
    ...(close.length > 0 ? { nearest: close } : {}),
    says: `"${key}" is no field of ${what}.`,
    todo:
      close.length > 0
        ? `Write ${either(close)}, or take it out.${hint}`
        : `Take it out; there is: ${names.join(', ')}.${hint}`,
  };
}

/** `scuff {opens: 2 h}` and `scuff:{opens: 2 h}` are YAML, with a field of the name up to the next colon. */
function uncolonned(source: YamlSource, path: Path, key: string, name: string): Problem {
  return {
    ...at(source, [...path, key], source.placeOfName([...path, key])),
    found: key,
    expected: `${name}: and its value`,
    says: `"${name}" has no colon with a space after it.`,
    todo: 'Write the name, a colon, a space and the value.',
  };
}

/** A name that is not among those known here: a milestone, a step class, a product. */
export function unknownName(
  source: YamlSource,
  path: Path,
  value: unknown,
  kind: string,
  names: readonly string[],
): Problem {
  const close = typeof value === 'string' ? nearest(value, names) : [];
  return {
    ...at(source, path, source.placeOf(path)),
    found: shown(value),
    expected: `${kind}: ${listed(names)}`,
    ...(close.length > 0 ? { nearest: close } : {}),
    says: `${shown(value)} is no ${kind.replace(/^an? /, '')}.`,
    todo: whatToWrite(kind, close, names),
  };
}

function whatToWrite(kind: string, close: readonly string[], names: readonly string[]): string {
  if (close.length > 0) return `Write ${either(close)}.`;
  return names.length > 0
    ? `Write one of: ${listed(names)}.`
    : `Take it out: there is not ${kind} yet.`;
}

/** Some names have a comma in them; then semicolons stand between. */
const listed = (names: readonly string[]): string =>
  names.join(names.some((name) => name.includes(',')) ? '; ' : ', ');

function missing(source: YamlSource, path: Path, expected: string): Problem {
  const name = String(path.at(-1) ?? '');
  return {
    ...at(source, path, source.placeOf(path.slice(0, -1))),
    found: 'nothing',
    expected,
    says: `"${name}" is missing.`,
    todo: `Add "${name}:" with ${expected}.`,
  };
}

/** The usual reason for a field without a value: `{then: sand hard, then coat}` ends at its comma. */
const commaHint = 'Text with a comma inside braces needs quotes.';

/** A value that is not what its field takes. */
export function wrong(source: YamlSource, path: Path, value: unknown, expected: string): Problem {
  return {
    ...at(source, path, source.placeOf(path)),
    found: shown(value),
    expected,
    says: `${nameIn(path)} is ${shown(value)}.`,
    todo:
      value === null && path.length > 0 ? `Write ${expected}. ${commaHint}` : `Write ${expected}.`,
  };
}

function nameIn(path: Path): string {
  const last = path.at(-1);
  if (last === undefined) return 'The whole file';
  return typeof last === 'number'
    ? `Entry ${last + 1} of "${String(path.at(-2))}"`
    : `"${String(last)}"`;
}

const at = (
  source: YamlSource,
  path: Path,
  place: Place,
): Place & { file: string; field: string } => ({
  file: source.file,
  ...place,
  field: fieldName(source.value, path),
});

/** `steps[sand-120].needs[1]`: entries of a list by their id, or by number from 1. */
export function fieldName(root: unknown, path: Path): string {
  let value = root;
  let name = '';
  for (const key of path) {
    const inside = isGroup(value) ? value[String(key)] : undefined;
    if (Array.isArray(value)) {
      const id =
        isGroup(inside) && typeof inside['id'] === 'string'
          ? inside['id']
          : String(Number(key) + 1);
      name += `[${id}]`;
    } else name += name === '' ? String(key) : `.${String(key)}`;
    value = inside;
  }
  return name;
}

export function valueAt(root: unknown, path: Path): unknown {
  return path.reduce<unknown>(
    (value, key) => (isGroup(value) ? value[String(key)] : undefined),
    root,
  );
}

export const isGroup = (value: unknown): value is Record<string, unknown> =>
  value !== null && typeof value === 'object';

const either = (names: readonly string[]): string =>
  names.length < 2 ? (names[0] ?? '') : `${names.slice(0, -1).join(', ')} or ${names.at(-1) ?? ''}`;
