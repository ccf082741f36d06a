import { createHash } from 'node:crypto';

/**
 * Fingerprint of plain data, 16 hexadecimal digits: the same for the same content, whatever the order of its fields,
 * so that a changed comment or indent makes no new edition.
 */
export function fingerprint(content: unknown): string {
  return createHash('sha256')
    .update(JSON.stringify(sorted(content)))
    .digest('hex')
    .slice(0, 16);
}

function sorted(value: unknown): unknown {
  if (Array.isArray(value)) return value.map(sorted);
  if (value === null || typeof value !== 'object') return value;
  const entries = Object.entries(value).sort(([one], [other]) => (one < other ? -1 : 1));
  return Object.fromEntries(entries.map(([name, inner]) => [name, sorted(inner)]));
}
