import { expect, test } from 'vitest';
import {
  coatWeightOf,
  foldBench,
  jobCard,
  takeBackName,
} from '../../../src/tracker/bench/index.ts';
import { given } from '../support/given-when-then.ts';
import { at } from '../support/instants.ts';
import { past } from '../support/past.ts';
import { schedule, step, twoCoats } from '../support/schedules.ts';
import { labelSense } from '../support/sense.ts';
import { Workday } from '../support/workday.ts';

const begun = past()
  .added('table', twoCoats, { name: 'Side table' })
  .stamped('table', 'coat 1', 'first-stroke', at('9:00'));
const tell = { do: 'tell coat weight', piece: 'table', part: null, weight: 'heavy' } as const;

test('is told of the last coat that is on, or of one that is named', () => {
  given(begun)
    .when(tell, at('9:10'))
    .then({
      kind: 'coat-weighed',
      body: { piece: 'table', part: null, step: 'coat 1', pass: 1, weight: 'heavy' },
    });
  given(begun).when(tell, at('9:10')).thenSays('heavy coat, coat 1 on 1 Side table');
  given(begun)
    .when({ ...tell, step: 'coat 2' }, at('9:10'))
    .thenRefused('Not noted: coat 2 on 1 Side table is no coat that is on.');
  given(past().added('table', twoCoats, { name: 'Side table' }))
    .when(tell, at('9:10'))
    .thenRefused('Not noted: no coat is on 1 Side table yet.');
});

test('comes with "done" as one deed, which is named after the coat', () => {
  const day = new Workday();
  const piece = day.adds('Side table', twoCoats, at('8:00'));
  day.firstStroke(piece, at('9:00'));
  day.does({ do: 'done', piece, part: null, coat: 'thin' }, at('9:20'));
  expect(day.said).toBe('coat 1 done on 1 Side table, thin coat');
  expect(coatWeightOf(day.piece(piece), 'coat 1', null, 1)).toBe('thin');
  expect(takeBackName(day.bench)).toBe('coat 1 done on 1 Side table');
  day.takesBack(at('9:21'));
  expect(day.piece(piece).coatWeights).toEqual([]);
  expect(day.piece(piece).finishes).toEqual([]);
});

test('only a coat is thin or heavy', () => {
  given(past().added('table', schedule('sand', [step('sand', 'scuff')]), { name: 'Side table' }))
    .when({ do: 'done', piece: 'table', part: null, coat: 'heavy' }, at('9:00'))
    .thenRefused('Not done: sand is no coat, so it is neither thin nor heavy.');
});

test('the last word on a pass and part counts, and what is told of the whole counts for each part', () => {
  const weighed = (weight: 'thin' | 'normal' | 'heavy', pass: number, part: string | null) =>
    ({ piece: 'table', step: 'coat 1', part, pass, weight }) as const;
  const told = begun
    .parts('table', 'top', 'case')
    .told('coat-weighed', weighed('heavy', 1, null))
    .told('coat-weighed', weighed('normal', 1, null))
    .told('coat-weighed', weighed('thin', 1, 'top'))
    .told('coat-weighed', weighed('heavy', 2, null));
  const bench = foldBench(told.facts);
  const table = bench.pieces.get('table');
  if (table === undefined) throw new Error('no table');
  const weights = [
    [null, 1],
    ['case', 1],
    ['top', 1],
    ['top', 2],
    [null, 3],
  ] as const;
  expect(weights.map(([part, pass]) => coatWeightOf(table, 'coat 1', part, pass))).toEqual([
    'normal',
    'normal',
    'thin',
    'heavy',
    null,
  ]);
  const row = jobCard(bench, table, at('10:00'), labelSense).rows.find(
    (each) => each.row === 'step',
  );
  expect(row).toMatchObject({
    weights: [
      { pass: 1, part: null, weight: 'normal' },
      { pass: 1, part: 'top', weight: 'thin' },
      { pass: 2, part: null, weight: 'heavy' },
    ],
  });
});
