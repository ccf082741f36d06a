import { crc32 } from 'node:zlib';
import { isRecord } from './is-record.ts';

/**
 * Steps and products stand in every piece's first fact, and pieces of one finishing schedule have the same ones: on a
 * full bench that is nine tenths of the file. So a file holds each such value once, under `shared`, and in its place in
 * the fact a reference `{"shared": "<key>"}`. Each file has its own, and is complete without any other.
 */
export type SharedTexts = Map<string, string>;

type Referring = { readonly line: string; readonly shares: readonly Keyed[] };

const known = new WeakMap<object, Referring>();

/** A fact's line, with what can be shared put into `texts`. Facts never change, so that is worked out once for each. */
export function lineOf(fact: object, texts: SharedTexts): string {
  let made = known.get(fact);
  if (made === undefined) known.set(fact, (made = referring(fact)));
  // Two values under one key are as good as never; then this fact keeps its own.
  if (made.shares.some(([key, text]) => (texts.get(key) ?? text) !== text))
    return JSON.stringify(fact);
  for (const [key, text] of made.shares) texts.set(key, text);
  return made.line;
}

function referring(fact: object): Referring {
  const shares: Keyed[] = [];
  const body = sharingBody(fact);
  if (body === null) return { line: JSON.stringify(fact), shares };
  const refer = (value: unknown): { readonly shared: string } => {
    const shared = keyedOnce(value);
    shares.push(shared);
    return { shared: shared[0] };
  };
  const products = Object.fromEntries(
    Object.entries(body.products).map(([id, product]) => [id, refer(product)]),
  );
  const line = JSON.stringify({ ...fact, body: { ...body, steps: refer(body.steps), products } });
  return { line, shares };
}

type Keyed = readonly [key: string, text: string];

function keyed(value: unknown): Keyed {
  const text = JSON.stringify(value);
  return [`${crc32(text).toString(36)}.${text.length.toString(36)}`, text];
}

const knownValues = new WeakMap<object, Keyed>();

/** Facts that were read from one file hold the very same value, so it is put into text once for all of them. */
function keyedOnce(value: unknown): Keyed {
  if (typeof value !== 'object' || value === null) return keyed(value);
  let made = knownValues.get(value);
  if (made === undefined) knownValues.set(value, (made = keyed(value)));
  return made;
}

/** The facts with their shared values in place. A reference to nothing stays one, and fails its schema. */
export function withShared(facts: unknown, shared: unknown): unknown {
  if (!Array.isArray(facts) || !isRecord(shared)) return facts;
  const valueOf = (place: unknown): unknown =>
    isRecord(place) && typeof place.shared === 'string' ? (shared[place.shared] ?? place) : place;
  return facts.map((fact: unknown) => {
    const body = isRecord(fact) ? sharingBody(fact) : null;
    if (!isRecord(fact) || body === null) return fact;
    const products = Object.fromEntries(
      Object.entries(body.products).map(([id, place]) => [id, valueOf(place)]),
    );
    return { ...fact, body: { ...body, steps: valueOf(body.steps), products } };
  });
}

type SharingBody = { readonly steps: unknown; readonly products: Record<string, unknown> };

/** The body of a fact that has something to share. */
function sharingBody(fact: object): SharingBody | null {
  if (!('kind' in fact) || fact.kind !== 'piece-added' || !('body' in fact)) return null;
  const { body } = fact;
  return isRecord(body) && 'steps' in body && isRecord(body.products)
    ? (body as SharingBody)
    : null;
}
