import { expect, test } from 'vitest';
import {
  layersAfter,
  over,
  type OverTable,
  type StepClass,
  type SurfaceWork,
} from '../../../src/tracker/trade/index.ts';

/** An invented table: two coats, a wax, a bleach, a rinse, a stripper, a glue. */
const groups = {
  coats: ['red coat', 'blue coat'],
  waxes: ['wax'],
  bleaches: ['bleach'],
  rinses: ['rinse'],
  strippers: ['stripper'],
  glues: ['glue'],
};
const row = { called: { below: '', above: '' }, why: 'invented', source: 'invented' };
const table: OverTable = {
  groups,
  usual: { wax: 'wax' },
  rows: [
    { below: ['wax'], above: ['wax'], verdict: 'yes', ...row },
    { below: ['wax'], above: ['red coat', 'blue coat'], verdict: 'no', ...row },
    { below: ['red coat', 'blue coat'], above: ['the same'], verdict: 'yes', ...row },
    { below: ['red coat'], above: ['blue coat', 'red coat'], verdict: 'no', ...row },
  ],
};

test('the first row that fits a pair counts, whatever the case of its letters', () => {
  expect(over(table, 'Wax', 'WAX').row?.verdict).toBe('yes');
  expect(over(table, 'wax', ' red coat ').row?.verdict).toBe('no');
  expect(over(table, 'red coat', 'blue coat').row?.verdict).toBe('no');
});

test('"the same" fits a class over itself and nothing else', () => {
  expect(over(table, 'red coat', 'Red coat').row?.verdict).toBe('yes');
  expect(over(table, 'blue coat', 'red coat').row).toBeNull();
});

test('what no row fits is not decided', () => {
  expect(over(table, 'my own can', 'wax').row).toBeNull();
  expect(over(table, 'wax', 'my own can').row).toBeNull();
});

const work = (stepClass: StepClass, productClass: string | null = null): SurfaceWork => ({
  name: stepClass,
  stepClass,
  productClass,
});
const lying = (...works: readonly SurfaceWork[]): readonly string[] =>
  layersAfter(works, table).map((top) => top.productClass + (top.scuffed ? ', dull' : ''));

test('a piece comes with an old finish, and what is put on lies over it in its order', () => {
  expect(lying()).toEqual(['old finish']);
  expect(lying(work('prime', 'red coat'), work('coat, brushed', 'blue coat'))).toEqual([
    'old finish',
    'red coat',
    'blue coat',
  ]);
});

test('sanding bare and stripping begin anew; a stripper lies there till it is rinsed off', () => {
  const coat = work('coat, brushed', 'red coat');
  expect(lying(coat, work('sand bare, first grit'))).toEqual(['bare wood']);
  expect(lying(coat, work('strip'))).toEqual(['bare wood']);
  expect(lying(coat, work('strip', 'stripper'))).toEqual(['bare wood', 'stripper']);
  expect(lying(work('strip', 'stripper'), work('rinse, neutralise'))).toEqual(['bare wood']);
});

test('a rinse takes up the bleach and then lies there itself', () => {
  const bared = work('sand bare, first grit');
  const bleach = work('bleach', 'bleach');
  expect(lying(bared, bleach)).toEqual(['bare wood', 'bleach']);
  expect(lying(bared, bleach, work('rinse, neutralise', 'rinse'))).toEqual(['bare wood', 'rinse']);
});

test('scuffing dulls what lies on top only, and the next coat is not dull', () => {
  const coat = work('coat, brushed', 'red coat');
  expect(lying(work('strip'), coat, work('scuff'))).toEqual(['bare wood', 'red coat, dull']);
  expect(lying(work('strip'), coat, work('scuff'), coat)).toEqual([
    'bare wood',
    'red coat, dull',
    'red coat',
  ]);
});

test('a step without a product puts on what such steps usually do; glue is no layer', () => {
  expect(lying(work('wax'))).toEqual(['old finish', 'wax']);
  expect(lying(work('reglue', 'glue'))).toEqual(['old finish']);
});

test('cleaning takes wax off only where it says so', () => {
  const clean = { ...work('clean'), name: 'clean, wax off' };
  expect(lying(work('wax'), work('clean'))).toEqual(['old finish', 'wax']);
  expect(lying(work('wax'), clean)).toEqual(['old finish']);
});
