import { describe, expect, test } from 'vitest';
import { matchFindings } from '../../../src/tracker/bench/index.ts';
import { matchWords } from '../../../src/views/format/match-words.ts';
import { at } from '../support/instants.ts';
import { clearCoat } from '../support/rules.ts';
import { product, twoCoats } from '../support/schedules.ts';
import { Workday } from '../support/workday.ts';

/** Invented cans of one varnish; `batch` is what the lid says. */
const can = (id: string, batch?: string, name = 'My varnish') =>
  product(id, 'waterborne', clearCoat, { name, can: batch === undefined ? {} : { batch } });

const opens = (piece: string, chosen: ReturnType<typeof can>, step = 'coat 1') =>
  ({ do: 'use product', piece, step, product: chosen }) as const;
const pickUp = (piece: string) => ({ do: 'pick up', targets: [{ piece, part: null }] }) as const;

/** Two chairs that should match: 1 has its first coat of one can on, 2 is to get its own of another. */
function chairs(one: ReturnType<typeof can>, other: ReturnType<typeof can>) {
  const day = new Workday();
  const first = day.adds('Chair', twoCoats, at('8:00'));
  const second = day.adds('Its twin', twoCoats, at('8:00'));
  day.does({ do: 'match pieces', piece: second, partner: first }, at('8:01'));
  day.does(opens(first, one), at('8:02')).does(opens(second, other), at('8:03'));
  return { day, first, second };
}
const coated = (one: ReturnType<typeof can>, other: ReturnType<typeof can>) => {
  const made = chairs(one, other);
  made.day.next(made.first, at('9:00')).done(made.first, at('9:20'));
  return made;
};
const told = (day: Workday, piece: string) =>
  matchFindings(day.bench, day.piece(piece), day.sense).map(matchWords);

describe('another batch of the same product', () => {
  const words = '1 took batch 7 C of My varnish, this batch 8';

  test('is told before the coat goes on: when its step is picked up', () => {
    const { day, second } = coated(can('old', '7 C'), can('new', '8'));
    day.does(pickUp(second), at('10:00'));
    expect(day.warned).toBe(words);
    expect(told(day, second)).toEqual([`1 Chair: ${words}`]);
  });

  test('is told when it is taken along, and when the can is chosen', () => {
    const { day, first, second } = coated(can('old', '7 C'), can('new', '8'));
    day.does(pickUp(first), at('12:00'));
    day.does({ do: 'take along', piece: second, part: null }, at('12:01'));
    expect(day.warned).toBeNull();
    day.does({ do: 'take along', piece: second, part: null }, at('12:02'));
    day.does(opens(second, can('third', '9')), at('12:03'));
    expect(day.warned).toBe('1 took batch 7 C of My varnish, this batch 9');
  });

  test('is mended by the partner’s can', () => {
    const { day, second } = coated(can('old', '7 C'), can('new', '8'));
    day.does(opens(second, can('old', '7 C')), at('9:30'));
    expect(day.warned).toBeNull();
    day.does(pickUp(second), at('10:00'));
    expect(day.warned).toBeNull();
    expect(told(day, second)).toEqual(['1 Chair: nothing differs so far']);
  });

  test('stays told of both once it is on, and warns no more', () => {
    const { day, first, second } = coated(can('old', '7 C'), can('new', '8'));
    day.next(second, at('10:00'));
    day.does({ do: 'put down' }, at('10:05')).does(pickUp(second), at('10:10'));
    expect(day.warned).toBeNull();
    expect(told(day, second)).toEqual([`1 Chair: ${words}`]);
    expect(told(day, first)).toEqual(['2 Its twin: 2 took batch 8 of My varnish, this batch 7 C']);
  });

  test('that the partner is only to get is told as that, on picking up the first of the two', () => {
    const { day, first, second } = chairs(can('old', '7 C'), can('new', '8'));
    expect(told(day, second)).toEqual(['1 Chair: nothing differs so far']);
    day.does(pickUp(second), at('10:00'));
    expect(day.warned).toBe('1 gets batch 7 C of My varnish, this batch 8');
    day.next(second, at('10:01'));
    expect(told(day, first)).toEqual(['2 Its twin: 2 took batch 8 of My varnish, this batch 7 C']);
  });

  test('counts once for all the coats that differ alike', () => {
    const { day, first, second } = chairs(can('old', '7 C'), can('new', '8'));
    day.does(opens(first, can('old', '7 C'), 'coat 2'), at('8:04'));
    day.does(opens(second, can('new', '8'), 'coat 2'), at('8:05'));
    day.next(first, at('9:00')).done(first, at('9:20'));
    day.does(pickUp(first), at('12:00')).next(first, at('12:01')).done(first, at('12:10'));
    day.next(first, at('12:11')).done(first, at('12:30'));
    expect(told(day, second)).toEqual([`1 Chair: ${words}`]);
  });

  test.each([
    ['spaces and capitals', can('old', '7 C'), can('new', '7c ')],
    ['no batch here', can('old', '7 C'), can('new')],
    ['no batch there', can('old'), can('new', '8')],
  ])('is not claimed for %s', (_, one, other) => {
    const { day, second } = coated(one, other);
    day.does(pickUp(second), at('10:00'));
    expect(day.warned).toBeNull();
    expect(told(day, second)).toEqual(['1 Chair: nothing differs so far']);
  });

  test('is not told beside another product', () => {
    const { day, second } = coated(can('old', '7 C'), can('new', '8', 'Her varnish'));
    expect(told(day, second)).toEqual(['1 Chair: coat 1: My varnish on 1, Her varnish here']);
  });
});
