import { expect, test } from 'vitest';
import { foldBench, jobCard, lateCheckOf } from '../../../src/tracker/bench/index.ts';
import { given } from '../support/given-when-then.ts';
import { at } from '../support/instants.ts';
import { past, type Past } from '../support/past.ts';
import { twoCoats } from '../support/schedules.ts';
import { labelSense } from '../support/sense.ts';

/** Last stroke at 9:30; the label opens recoat after two hours, at 11:30. */
const coated = past()
  .added('table', twoCoats, { name: 'Side table' })
  .stamped('table', 'coat 1', 'first-stroke', at('9:00'))
  .done('table', 'coat 1', at('9:30'));
const checked = (before: Past, finding: 'ready' | 'not yet' | 'trouble', when: string): Past =>
  before.told(
    'checked',
    {
      piece: 'table',
      part: null,
      step: 'coat 1',
      window: 'table/coat 1/recoat//1/',
      finding,
      air: null,
    },
    { at: at(when) },
  );
const late = (told: Past) => {
  const bench = foldBench(told.facts);
  const table = bench.pieces.get('table');
  if (table === undefined) throw new Error('no table');
  return lateCheckOf(bench, table, labelSense);
};
const explain = { do: 'explain lateness', piece: 'table', cause: 'cold' } as const;

test('three times the expected wait is late; earlier checks are not counted in', () => {
  const opening = labelHours(coated);
  expect(opening).toBe(2);
  expect(late(checked(coated, 'not yet', '15:29'))).toBeNull();
  expect(late(checked(coated, 'not yet', '15:30'))?.times).toBeCloseTo(3, 9);
  const tried = checked(checked(coated, 'not yet', '11:30'), 'not yet', '17:30');
  expect(late(tried)?.times).toBeCloseTo(4, 9);
});

/** What the label says, in hours from the last stroke. */
function labelHours(told: Past): number {
  const found = late(checked(told, 'not yet', '33:30'));
  return found === null ? 0 : 24 / found.times;
}

test('the check says so, and nobody asks again once it was told or found ready', () => {
  given(coated)
    .when({ do: 'check', piece: 'table', part: null, finding: 'not yet' }, at('15:30'))
    .thenSays('not yet, next coat on 1 Side table; 3.0 times as long as expected');
  given(coated)
    .when({ do: 'check', piece: 'table', part: null, finding: 'not yet' }, at('15:00'))
    .thenSays('not yet, next coat on 1 Side table');
  const told = checked(coated, 'not yet', '16:00');
  const check = told.facts.at(-1)?.id ?? '';
  given(told)
    .when(explain, at('16:01'))
    .then({ kind: 'lateness-explained', body: { piece: 'table', check, cause: 'cold' } });
  const explained = told.told('lateness-explained', { piece: 'table', check, cause: 'cold' });
  expect(late(explained)).toBeNull();
  expect(late(checked(told, 'ready', '17:00'))).toBeNull();
  // A later "not yet" is another question.
  expect(late(checked(explained, 'not yet', '20:00'))).not.toBeNull();
});

test('the job card tells why', () => {
  const told = checked(coated, 'not yet', '16:00');
  const check = told.facts.at(-1)?.id ?? '';
  const again = told
    .told('lateness-explained', { piece: 'table', check, cause: 'cold' })
    .told('lateness-explained', { piece: 'table', check, cause: 'old can' });
  const bench = foldBench(again.facts);
  const table = bench.pieces.get('table');
  if (table === undefined) throw new Error('no table');
  const { rows } = jobCard(bench, table, at('17:00'), labelSense);
  expect(rows.filter(({ row }) => row === 'check')).toMatchObject([{ why: 'old can' }]);
});

test('without a "not yet" there is nothing to explain', () => {
  given(coated)
    .when(explain, at('16:00'))
    .thenRefused('Not noted: the last check of 1 Side table was no "not yet".');
  given(checked(checked(coated, 'not yet', '16:00'), 'ready', '16:30'))
    .when(explain, at('17:00'))
    .thenRefused(/was no "not yet"/);
});

test('trouble told after a "not yet" is no finding: it can still be told why that came so late', () => {
  const told = checked(checked(coated, 'not yet', '16:00'), 'trouble', '16:05');
  expect(late(told)?.times).toBeGreaterThan(3);
  given(told).when(explain, at('16:06')).thenSays('late for cold on 1 Side table');
});

test('what was found ready is told without how late it was: the wait is over', () => {
  given(coated)
    .when({ do: 'check', piece: 'table', part: null, finding: 'ready' }, at('16:00'))
    .thenSays('ready, next coat on 1 Side table');
});
