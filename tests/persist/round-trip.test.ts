import * as fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { factsText, readDocument } from '../../src/persist/file/document.ts';
import { memoryStore } from '../../src/persist/index.ts';
import { benchBodies } from '../../src/persist/schemas/bench-facts.ts';
import { checkContents } from '../../src/persist/schemas/check.ts';
import { anyBenchFact, anyConditionsFact, anyPingFact, benchFactsByKind } from './any-fact.ts';
import { newFolder, openReader, openWriter, put, textOf, valueOf } from './places.ts';

/** A list in which no two facts have one id, as tellers make them. */
const list = <Fact extends { readonly id: string }>(fact: fc.Arbitrary<Fact>) =>
  fc.uniqueArray(fact, { maxLength: 8, selector: ({ id }) => id });

const appendings = fc.record({
  bench: list(anyBenchFact),
  conditions: list(anyConditionsFact),
  pings: list(anyPingFact),
});

it('reads back any facts equal to what was stored, from the disk as from memory', async () => {
  await fc.assert(
    fc.asyncProperty(fc.array(appendings, { minLength: 1, maxLength: 3 }), async (changes) => {
      const folder = newFolder();
      const onDisk = await openWriter(folder);
      const inMemory = memoryStore();
      for (const append of changes) {
        for (const store of [onDisk, inMemory])
          valueOf(store.change(() => ({ append, result: null })));
      }
      const expected = valueOf(inMemory.load());
      for (const kind of ['bench', 'conditions', 'pings'] as const) {
        expect(valueOf(onDisk.load())[kind]).toEqual(expected[kind]);
        expect((await openReader(folder))[kind]).toEqual(expected[kind]);
      }
    }),
    { numRuns: 40 },
  );
}, 60_000);

it('finds the same facts in a file whose sum is gone, checking each', async () => {
  await fc.assert(
    fc.asyncProperty(list(anyBenchFact), async (facts) => {
      const folder = newFolder();
      valueOf(
        (await openWriter(folder)).change(() => ({ append: { bench: facts }, result: null })),
      );
      if (facts.length > 0) {
        put(folder, 'bench.json', textOf(folder, 'bench.json').replace(/,"sum":"[0-9a-f]+"/, ''));
      }
      const opened = await openReader(folder);
      expect(opened.bench).toEqual(facts);
      expect(opened.notices).toEqual([]);
    }),
    { numRuns: 40 },
  );
}, 60_000);

describe('every kind of fact', () => {
  it('has an example here', () => {
    expect(benchFactsByKind).toHaveLength(Object.keys(benchBodies).length);
  });

  it('fits its schema whole, and does not with a field left out or added anywhere', () => {
    fc.assert(
      fc.property(anyBenchFact, fc.nat(), (fact, choice) => {
        expect(checkContents([fact], 'bench', '')).toBeNull();
        const places = placesIn(fact);
        const place = places[choice % places.length] ?? [];
        const spoiled = structuredClone(fact) as Record<string, unknown>;
        const inside = place.reduce<unknown>((value, key) => (value as never)[key], spoiled);
        (inside as Record<string, unknown>)['not a field'] = 1;
        expect(checkContents([spoiled], 'bench', '')?.says).toContain(
          'unknown field "not a field"',
        );
      }),
    );
    fc.assert(
      fc.property(
        anyBenchFact,
        fc.constantFrom('id', 'group', 'at', 'told', 'by', 'body'),
        (fact, gone) => {
          const { [gone]: _left, ...spoiled } = fact as Record<string, unknown>;
          expect(checkContents([spoiled], 'bench', '')?.says).toBe(
            `fact 1: ${gone} is missing, expected ${expectedOf[gone]}`,
          );
        },
      ),
    );
  });
});

const expectedOf: Readonly<Record<string, string>> = {
  id: 'string',
  group: 'string',
  at: 'number',
  told: 'number',
  by: 'person, script, clock',
  body: 'object',
};

/** Paths of all objects in a fact that have fields of their own names; the products of a piece are named by the user. */
function placesIn(
  value: unknown,
  path: readonly (string | number)[] = [],
): readonly (readonly (string | number)[])[] {
  if (typeof value !== 'object' || value === null) return [];
  const inner = Object.entries(value).flatMap(([key, inside]) => placesIn(inside, [...path, key]));
  const isNamedByUser =
    ['products', 'answers', 'minutesTimes'].includes(String(path.at(-1))) ||
    path.at(-2) === 'minutesTimes';
  return Array.isArray(value) || isNamedByUser ? inner : [path, ...inner];
}

it('notices any change of one byte, by the sum', () => {
  fc.assert(
    fc.property(
      list(anyBenchFact),
      fc.nat(),
      fc.integer({ min: 1, max: 255 }),
      (facts, at, flip) => {
        const bytes = Buffer.from(factsText(1, facts));
        expect(readDocument(bytes, 'bench')).toMatchObject({ vouched: true, contents: facts });
        const index = at % bytes.length;
        bytes[index] = (bytes[index] ?? 0) ^ flip;
        const read = readDocument(bytes, 'bench');
        if (!('says' in read)) expect(read.vouched).toBe(false);
      },
    ),
  );
});
