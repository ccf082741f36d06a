import fc from 'fast-check';
import { expect, test } from 'vitest';
import { day, minute } from '../../../src/tracker/time/index.ts';
import { cautionsAt, rules } from '../cautions/invented-rules.ts';
import { at } from '../support/instants.ts';
import { past } from '../support/past.ts';
import { schedule, step } from '../support/schedules.ts';
import { tried } from './law.ts';

const wordOf = (chemical: string): string => {
  const word = rules.chemicals.find(({ name }) => name === chemical)?.words[0];
  if (word === undefined) throw new Error(`no word for ${chemical}`);
  return word;
};
/** Pairs of which neither goes by drying: they stay dangerous for ever. */
const lasting = rules.pairs.filter(({ of }) =>
  of.every((name) => rules.chemicals.find((each) => each.name === name)?.goneWhenDry === false),
);
/** Work that takes nothing out of the wood. */
const idle = ['sand 120', 'look over', 'clear coat', 'scuff 320', 'wax on'];

test('a deadly pair is said whatever the order of its two and whatever is done between', () => {
  fc.assert(
    fc.property(
      fc.constantFrom(...lasting),
      fc.boolean(),
      fc.array(fc.constantFrom(...idle), { maxLength: 6 }),
      fc.array(fc.constantFrom(...idle), { maxLength: 6 }),
      fc.integer({ min: 1, max: 2000 }),
      (pair, isTurned, before, between, days) => {
        const [one, other] = isTurned ? [...pair.of].reverse() : pair.of;
        const names = [...before, wordOf(one ?? ''), ...between, wordOf(other ?? '')];
        const steps = names.map((name, index) => step(`step-${index}`, 'other', { name }));
        const last = `step-${names.length - 1}`;
        const told = steps
          .slice(0, -1)
          .reduce(
            (all, { id }, index) => all.done('chest', id, at('9:00') + index * minute),
            past().added('chest', schedule('any', steps)),
          );
        const { full } = cautionsAt(told, 'chest', last, at('9:00') + days * day);
        const found = full.find(({ id }) => id === `pair: ${pair.of.join(', ')}`);
        expect([found?.deadly, found?.source]).toEqual([true, pair.source]);
      },
    ),
    tried(300),
  );
});

test('every pair is said while both are wet on two pieces, whichever is picked up second', () => {
  for (const pair of rules.pairs) {
    for (const [one = '', other = ''] of [pair.of, pair.of.toReversed()]) {
      const told = past()
        .added('stool', schedule('one', [step('on', 'other', { name: wordOf(one) })]), {
          number: 2,
        })
        .added('chest', schedule('other', [step('on', 'other', { name: wordOf(other) })]))
        .done('stool', 'on', at('11:30'));
      const { full, isDeadly } = cautionsAt(told, 'chest', 'on');
      expect(full.map(({ id }) => id)).toContain(`pair: ${pair.of.join(', ')}`);
      expect(isDeadly).toBe(true);
    }
  }
});
