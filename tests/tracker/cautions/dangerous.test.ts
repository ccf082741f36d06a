import { expect, test } from 'vitest';
import { hour } from '../../../src/tracker/time/index.ts';
import { at } from '../support/instants.ts';
import { past, target } from '../support/past.ts';
import { clearCoat, milestone } from '../support/rules.ts';
import { product, schedule, step } from '../support/schedules.ts';
import { cautionsAt, idsOf, theOne } from './invented-rules.ts';

const chlorine = product('chlorine', 'reaction', [], { productClass: 'chlorine bleach' });
const vinegar = product('vinegar', 'reaction', [], { productClass: 'acid rinse' });
const water = product('water', 'reaction', [], { productClass: 'water rinse' });

const bleachOut = schedule(
  'bleach-out',
  [
    step('bleach', 'bleach', { product: 'chlorine' }),
    step('water', 'rinse, neutralise', { product: 'water' }),
    step('vinegar', 'rinse, neutralise', { product: 'vinegar' }),
    step('bleach-2', 'bleach', { product: 'chlorine' }),
  ],
  [chlorine, vinegar, water],
);
const pair = 'pair: chlorine bleach, vinegar';
const onBench = past().added('chest', bleachOut);

test('vinegar on chlorine bleach that was never rinsed is deadly, and says what to do first', () => {
  const told = onBench.done('chest', 'bleach', at('9:00'));
  const cautions = cautionsAt(told, 'chest', 'vinegar');
  const found = theOne(cautions, pair);
  expect(found?.deadly).toBe(true);
  expect(found?.says).toBe(
    'Chlorine bleach is on this piece (bleach), not rinsed out. With vinegar it makes chlorine, a deadly gas. First: clear water more than once, then thiosulfate; no acid.',
  );
  expect(cautions.all[0]?.id).toBe(pair);
  expect(cautions.isDeadly).toBe(true);
});

test('it is said every time, also years later and when the step was done before', () => {
  const told = onBench
    .done('chest', 'bleach', at('9:00'))
    .done('chest', 'vinegar', at('10:00'))
    .told('step-inserted', {
      piece: 'chest',
      step: step('again', 'rinse, neutralise', { product: 'vinegar' }),
      before: null,
    });
  expect(idsOf(cautionsAt(told, 'chest', 'again', at('20000:00')).full)).toContain(pair);
});

test('the other way round it is as deadly: chlorine bleach where vinegar was put on', () => {
  const told = onBench.done('chest', 'vinegar', at('9:00'));
  expect(theOne(cautionsAt(told, 'chest', 'bleach-2'), pair)?.deadly).toBe(true);
});

test('a bleach that was only picked up counts, since nobody can tell what went on', () => {
  const told = onBench
    .pickedUp('s', at('9:00'), [target('chest', 'bleach')])
    .putDown('s', at('9:10'));
  expect(theOne(cautionsAt(told, 'chest', 'vinegar'), pair)?.deadly).toBe(true);
});

test('rinsed with water since it is still said, but no longer as deadly', () => {
  const told = onBench.done('chest', 'bleach', at('9:00')).done('chest', 'water', at('10:00'));
  const found = theOne(cautionsAt(told, 'chest', 'vinegar'), pair);
  expect(found?.deadly).toBe(false);
  expect(found?.says).toContain('in doubt rinse again first');
});

test('a rinse that came before the bleach, or that is not finished, takes nothing out', () => {
  const before = onBench.done('chest', 'water', at('8:30')).done('chest', 'bleach', at('9:00'));
  expect(theOne(cautionsAt(before, 'chest', 'vinegar'), pair)?.deadly).toBe(true);
  const begun = onBench
    .done('chest', 'bleach', at('9:00'))
    .stamped('chest', 'water', 'first-stroke', at('10:00'));
  expect(theOne(cautionsAt(begun, 'chest', 'vinegar'), pair)?.deadly).toBe(true);
});

test('chlorine bleach wet on another piece is deadly too; a day later nothing of it is said', () => {
  const told = onBench
    .added('stool', bleachOut, { number: 2, name: 'Beech stool' })
    .done('stool', 'bleach', at('11:00'));
  const found = theOne(cautionsAt(told, 'chest', 'vinegar'), pair);
  expect(found?.deadly).toBe(true);
  expect(found?.says).toContain('is wet on 2 Beech stool');
  expect(idsOf(cautionsAt(told, 'chest', 'vinegar', at('60:00')).all)).not.toContain(pair);
});

test('without a window that tells, it counts as wet on another piece for a day', () => {
  const told = onBench
    .added('stool', bleachOut, { number: 2 })
    .done('stool', 'bleach', at('11:00'));
  const beside = (clock: string) => idsOf(cautionsAt(told, 'chest', 'vinegar', at(clock)).all);
  expect(beside('34:59')).toContain(pair);
  expect(beside('35:00')).not.toContain(pair);
});

test('it is wet till the label says, though somebody has begun the next step on it before', () => {
  const slow = product('chlorine', 'reaction', [milestone('dry', 12 * hour)], {
    productClass: 'chlorine bleach',
  });
  const hasty = schedule(
    'hasty',
    [
      step('bleach', 'bleach', { product: 'chlorine' }),
      step('sand', 'sand bare, first grit', { needs: ['dry'] }),
    ],
    [slow],
  );
  const told = onBench
    .added('stool', hasty, { number: 2 })
    .stamped('stool', 'bleach', 'first-stroke', at('10:50'))
    .done('stool', 'bleach', at('11:00'))
    .done('stool', 'sand', at('11:30'));
  const beside = (clock: string) => theOne(cautionsAt(told, 'chest', 'vinegar', at(clock)), pair);
  expect(beside('12:00')?.deadly).toBe(true);
  expect(beside('22:59')?.deadly).toBe(true);
});

test('rinsed out here and wet on another piece it is deadly all the same', () => {
  const told = onBench
    .done('chest', 'bleach', at('9:00'))
    .done('chest', 'water', at('10:00'))
    .added('stool', bleachOut, { number: 2, name: 'Beech stool' })
    .done('stool', 'bleach', at('11:00'));
  const found = theOne(cautionsAt(told, 'chest', 'vinegar'), pair);
  expect(found?.deadly).toBe(true);
  expect(found?.says).toContain('is wet on 2 Beech stool');
});

test('what can kill stands before what the moment brings', () => {
  const gas = product('gas', 'reaction', [], {
    productClass: 'my own can',
    cautions: ['Its gas kills in a closed room.'],
    deadly: true,
  });
  const plan = schedule(
    'plan',
    [step('work', 'strip', { product: 'gas', dusty: true }), step('coat', 'coat, brushed')],
    [gas],
  );
  const fresh = product('clear', 'waterborne', clearCoat, { productClass: 'my own clear' });
  const coated = schedule('coated', [step('coat', 'coat, brushed', { product: 'clear' })], [fresh]);
  const told = past()
    .added('chest', plan)
    .added('stool', coated, { number: 2 })
    .done('stool', 'coat', at('11:50'));
  const { all } = cautionsAt(told, 'chest', 'work');
  expect(idsOf(all)).toContain('tacky');
  expect(all[0]).toMatchObject({ says: 'Its gas kills in a closed room.', deadly: true });
});

test('a step that no product belongs to is known by its words, and both in one step are said', () => {
  const words = schedule('words', [
    step('a', 'bleach', { name: 'dab laundry bleach on the ink' }),
    step('b', 'other', { name: 'wash with vinegar' }),
    step('c', 'other', { name: 'household bleach, then vinegar' }),
    step('d', 'other', { name: 'oil the hinges' }),
  ]);
  const told = past().added('chest', words).done('chest', 'a', at('9:00'));
  expect(theOne(cautionsAt(told, 'chest', 'b'), pair)?.deadly).toBe(true);
  expect(theOne(cautionsAt(told, 'chest', 'c'), pair)?.says).toContain('in one step');
  expect(idsOf(cautionsAt(told, 'chest', 'd').all)).toEqual([]);
});

test('taken back, the bleach was never there', () => {
  const told = onBench.done('chest', 'bleach', at('9:00'), { group: 'key' });
  const back = told.told('group-withdrawn', { withdrawn: 'key' });
  expect(idsOf(cautionsAt(back, 'chest', 'vinegar').all)).not.toContain(pair);
});

test('what is wrong but not dangerous is said with its right partner, and a rinse says what it wants', () => {
  const lye = product('lye', 'reaction', [], { productClass: 'caustic stripper' });
  const soda = product('soda', 'reaction', [], { productClass: 'alkaline rinse' });
  const plan = schedule(
    'lye',
    [
      step('strip', 'strip', { product: 'lye' }),
      step('soda', 'rinse, neutralise', { product: 'soda' }),
      step('vinegar', 'rinse, neutralise', { product: 'vinegar' }),
    ],
    [lye, soda, vinegar],
  );
  const told = past().added('chest', plan).done('chest', 'strip', at('9:00'));
  const wrong = theOne(cautionsAt(told, 'chest', 'soda'), 'partner: lye');
  expect(wrong?.says).toContain('Bicarbonate or borax is the wrong partner for lye (strip)');
  const right = theOne(cautionsAt(told, 'chest', 'vinegar'), 'partner: lye');
  expect(right?.says).toContain('1 g of it takes 30 g of white vinegar of 5 %');
  expect(right?.ofTheMoment).toBe(false);
});
