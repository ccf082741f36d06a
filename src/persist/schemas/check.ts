import type * as z from 'zod/mini';
import { nearest } from '../../tracker/trade/index.ts';
import { isRecord } from '../file/is-record.ts';
import type { ContentsName } from '../folder/names.ts';
import type { ContentsCheck } from '../reading/inspect.ts';
import { factSchemas } from './facts.ts';

/** Holds contents to the schemas, and names the first fact and field that don't fit. */
export const checkContents: ContentsCheck = (contents, holds, text) => {
  if (holds === 'settings') {
    return isRecord(contents) ? null : { says: '"settings" is missing or no object', line: null };
  }
  if (!Array.isArray(contents)) return { says: '"facts" is missing or no list', line: null };
  for (const [index, fact] of (contents as readonly unknown[]).entries()) {
    const wrong = wrongWithFact(fact, holds);
    if (wrong !== null)
      return { says: `fact ${index + 1}: ${wrong}`, line: lineOfFact(fact, text) };
  }
  return null;
};

/** What does not fit, in words; null if all does. */
export function wrongWithFact(
  fact: unknown,
  holds: Exclude<ContentsName, 'settings'>,
): string | null {
  if (!isRecord(fact)) return `it is ${found(fact)}, expected an object`;
  const { kind } = fact;
  const schema = typeof kind === 'string' ? factSchemas[holds].get(kind)?.() : undefined;
  if (schema === undefined) {
    return `kind is ${found(kind)}, expected a kind of fact${meant(kind, factSchemas[holds].keys())}`;
  }
  try {
    const outcome = schema.safeParse(fact);
    return outcome.success ? null : wrongField(fact, outcome.error.issues[0]);
  } catch (error) {
    // Edges nested tens of thousands deep run the stack out.
    if (error instanceof RangeError) return 'it is nested too deep';
    throw error;
  }
}

function wrongField(fact: unknown, issue: z.core.$ZodIssue | undefined): string {
  if (issue === undefined) return 'it does not fit';
  const value = issue.path.reduce<unknown>(
    (inside, key) => (inside as Record<PropertyKey, unknown> | undefined)?.[key],
    fact,
  );
  const field = issue.path
    .map((key) => (typeof key === 'number' ? `[${key}]` : `.${String(key)}`))
    .join('')
    .slice(1);
  return `${field || 'it'} ${wrongValue(issue, value)}`;
}

function wrongValue(issue: z.core.$ZodIssue, value: unknown): string {
  if (issue.code === 'unrecognized_keys') return `has an unknown field "${issue.keys[0]}"`;
  if (issue.code === 'invalid_value') {
    const words = issue.values.map(String);
    return `is ${found(value)}, expected ${words.join(', ')}${meant(value, words)}`;
  }
  if (issue.code === 'invalid_type') return `is ${found(value)}, expected ${issue.expected}`;
  return `is ${found(value)}, which does not fit`;
}

function found(value: unknown): string {
  if (value === undefined) return 'missing';
  if (Array.isArray(value)) return 'a list';
  if (typeof value === 'object' && value !== null) return 'an object';
  const text = JSON.stringify(value);
  return text.length > 60 ? `${text.slice(0, 60)}...` : text;
}

function meant(typed: unknown, words: Iterable<string>): string {
  const [near] = typeof typed === 'string' ? nearest(typed, words, 1) : [];
  return near === undefined ? '' : ` (nearest: ${near})`;
}

/** The first line that has the fact's id: it is named by others only after it was made. */
function lineOfFact(fact: unknown, text: string): number | null {
  if (!isRecord(fact) || typeof fact.id !== 'string') return null;
  const at = text.indexOf(JSON.stringify(fact.id));
  return at < 0 ? null : text.slice(0, at).split('\n').length;
}
