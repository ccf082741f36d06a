import { expect, test } from 'vitest';
import { readRules } from '../../../src/persist/schedules/index.ts';
import { loadSchedules } from '../../../src/persist/schedules/parsing.ts';

const templates = new URL('../../../templates/', import.meta.url).pathname;
const { rules } = await readRules({ built: null, templates });

/** An invented schedule of bare steps: id, class, product, what it needs, for which wood it is. */
type Line = readonly [
  id: string,
  stepClass: string,
  product?: string | undefined,
  needs?: string | undefined,
  wood?: string,
];

const classes = {
  wax: 'paste wax',
  clear: 'waterborne polyurethane',
  stain: 'oil stain',
  lacquer: 'nitrocellulose lacquer',
  mine: 'my own can',
};

function problemsOf(...lines: readonly Line[]) {
  const products = Object.entries(classes).map(
    ([id, name]) =>
      `  ${id}: {name: ${id}, class: ${name}, dries: waterborne, stated for: 23 C 50 %, source: p, coat: {recoat: {opens: 2 h}}}`,
  );
  const steps = lines.map(
    ([id, stepClass, product, needs, wood]) =>
      `  - {id: ${id}, name: ${id}, class: '${stepClass}', minutes: {typical: 2, low: 1, high: 3}, driver: area, setup: 0` +
      `${product === undefined ? '' : `, product: ${product}`}${needs === undefined ? '' : `, needs: [${needs}]`}` +
      `${wood === undefined ? '' : `, only if: {wood: ${wood}}`}}`,
  );
  const text = [
    'id: invented',
    'name: Invented',
    'summary: invented',
    'sources: {p: invented}',
    'source: p',
    'products:',
    ...products,
    'steps:',
    ...steps,
  ].join('\n');
  return loadSchedules([{ path: 'invented.yaml', text }], undefined, rules.over).problems;
}

test('a coat over wax is a problem with its file, line and field, and what to do instead', () => {
  const problems = problemsOf(['wax-on', 'wax', 'wax'], ['clear-on', 'coat, brushed', 'clear']);
  expect(problems).toMatchObject([
    {
      file: 'invented.yaml',
      line: 14,
      field: 'steps[clear-on].product',
      found: '"waterborne polyurethane"',
      says: 'waterborne polyurethane over paste wax does not go; nothing but wax holds on wax.',
    },
  ]);
  expect(problems[0]?.todo).toMatch(/^Instead: wash the wax off/);
});

test('it is told once, however many ways lead to it', () => {
  const problems = problemsOf(
    ['knots', 'look over', undefined, undefined, 'soft'],
    ['wax-on', 'wax', 'wax'],
    ['clear-on', 'coat, brushed', 'clear'],
  );
  expect(problems.map(({ field }) => field)).toEqual(['steps[clear-on].product']);
});

test('what goes over when dry must wait for it', () => {
  const stain: Line = ['stain-on', 'stain', 'stain'];
  expect(problemsOf(stain, ['lacquer-on', 'coat, sprayed', 'lacquer'])).toMatchObject([
    { says: expect.stringContaining('goes only after: dry') as string },
  ]);
  expect(problemsOf(stain, ['lacquer-on', 'coat, sprayed', 'lacquer', 'recoat'])).toEqual([]);
});

test('the first coat over what nobody knows, and a class that no row has, are no problem', () => {
  expect(problemsOf(['lacquer-on', 'coat, sprayed', 'lacquer'])).toEqual([]);
  expect(problemsOf(['wax-on', 'wax', 'wax'], ['own', 'coat, brushed', 'mine'])).toEqual([]);
});

test('stripping between takes the problem away', () => {
  expect(
    problemsOf(['wax-on', 'wax', 'wax'], ['off', 'strip'], ['clear-on', 'coat, brushed', 'clear']),
  ).toEqual([]);
});
