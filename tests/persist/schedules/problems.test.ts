import { expect, test } from 'vitest';
import { tellProblem } from '../../../src/persist/schedules/index.ts';
import { loadSchedules } from '../../../src/persist/schedules/parsing.ts';
import {
  changed,
  lineOf,
  productsFile,
  productsText,
  scheduleText,
  told,
  withProducts,
  withSchedule,
} from './texts.ts';

test('a wrong field is told with file, line, column, field, what stands there, what belongs there and the nearest name', () => {
  const text = changed(scheduleText, 'needs: [recoat]', 'needs: [recot]');
  const { problems, schedules } = withSchedule(text);
  expect(schedules).toEqual([]);
  expect(problems).toEqual([
    {
      file: 'schedule.yaml',
      line: lineOf(text, 'recot'),
      column: 13,
      field: 'steps[coat-2].needs[1]',
      found: '"recot"',
      expected:
        'a milestone: dust-free, scuff, recoat, turn over, rub out, refit, wrap, light use, full cure, dry, clamps off',
      nearest: ['recoat', 'refit'],
      says: '"recot" is no milestone.',
      todo: 'Write recoat or refit.',
    },
  ]);
  expect(problems.map(tellProblem)).toEqual([
    'schedule.yaml, line 33, steps[coat-2].needs[1]: "recot" is no milestone. Write recoat or refit.',
  ]);
});

/** What was written instead of what; in which line and field it is found, and what is said. */
const inSchedule: readonly (readonly [string, string, string, string, RegExp])[] = [
  ['grit: 320', 'gritt: 320', 'gritt', 'steps[scuff].gritt', /no field of a step.* Write grit/],
  [
    'grit: 320',
    'colour: red',
    'colour',
    'steps[scuff].colour',
    /no field of a step.* Take it out; there is: id, name/,
  ],
  [
    'setup: 8',
    'setup: eight',
    'eight',
    'steps[scuff].setup',
    /is "eight".* Write a number of minutes/,
  ],
  ['setup: 8', 'setup: -8', '-8', 'steps[scuff].setup', /is -8.* 0 to 1440/],
  ['dusty: true', 'dusty: yes', 'dusty', 'steps[scuff].dusty', /is "yes".* true or false/],
  [
    'class: scuff',
    'class: scuf',
    'class: scuf',
    'steps[scuff].class',
    /no step class.* Write scuff/,
  ],
  [
    'class: scuff',
    'class: rasp',
    'rasp',
    'steps[scuff].class',
    /no step class.* one of: look over; lead test;/,
  ],
  ['needs: [scuff]', 'needs: [wrap, wax]', 'wax', 'steps[scuff].needs[2]', /"wax" is no milestone/],
  ['needs: [scuff]', 'needs: scuff', 'needs: scuff', 'steps[scuff].needs', /a list of milestones/],
  [
    'needs: [scuff]',
    'needs: [rub out]',
    'rub out',
    'steps[scuff].needs[1]',
    /No step before this one starts "rub out".* scuff, recoat, wrap/,
  ],
  [
    'product: clear',
    'product: claer',
    'claer',
    'steps[coat-1].product',
    /no product.* Write clear/,
  ],
  [
    '[first stroke]',
    '[frist stroke]',
    'frist',
    'steps[coat-1].stamps[1]',
    /Entry 1 of "stamps" is "frist stroke"/,
  ],
  [
    '[first stroke]',
    '[last stroke]',
    'last',
    'steps[coat-1].stamps[1]',
    /one stamp such as "first stroke"/,
  ],
  [
    '[first stroke]',
    '[{stamp: first stroke, sais: on}]',
    'sais',
    'steps[coat-1].stamps[1].sais',
    /Write says/,
  ],
  [
    'low: 10',
    'low: 20',
    'low: 20, high: 30',
    'steps[scuff].minutes',
    /don't rise from low over typical to high: 20, 15, 30/,
  ],
  [
    'id: scuff',
    'id: coat-1',
    'name: scuff',
    'steps[coat-1].id',
    /already that of the step in line 7/,
  ],
  [
    'id: scuff',
    'id: Scuff 320',
    'Scuff 320',
    'steps[Scuff 320].id',
    /small letters, figures and dashes/,
  ],
  ['name: scuff 320', 'name: ""', 'name: ""', 'steps[scuff].name', /a name, 1 to 200 letters/],
  [
    'source: practice',
    'source: practise',
    'practise',
    'source',
    /"practise" is no source listed here.* Write practice/,
  ],
  ['id: two-coats', 'id: [two]', 'id: [two]', 'id', /"id" is a list/],
  ['    grit: 320', '    passes: 1', 'passes', 'steps[scuff].passes', /2 to 30/],
  [
    'summary: Clear twice, scuffed between.\n',
    '',
    'id: two-coats',
    'summary',
    /"summary" is missing.* Add "summary:"/,
  ],
];

test.each(inSchedule)('schedule: %s -> %s', (from, to, where, field, says) => {
  const text = changed(scheduleText, from, to);
  const { problems, schedules } = withSchedule(text);
  expect(schedules).toEqual([]);
  const problem = problems.find((each) => each.field === field);
  expect(problems.length).toBe(1);
  const line = from === 'id: scuff' ? lineOf(text, 'name: scuff') - 1 : lineOf(text, where);
  expect(problem).toMatchObject({ file: 'schedule.yaml', line, field });
  expect(`${problem?.says} ${problem?.todo}`).toMatch(says);
});

const inProducts: readonly (readonly [string, string, string, string, RegExp])[] = [
  [
    'closes: 12 h',
    'closes: 90 min',
    'closes: 90',
    'products.clear.coat.recoat.closes',
    /closing is not after its opening/,
  ],
  [
    'hard: 20 min',
    'hard: 10 min',
    'closes: {soft',
    'products.bleach.windows.b-on.closes',
    /closing is not after/,
  ],
  [
    'from: 1 h, until: 48 h',
    'from: 1 h',
    'from: 1 h',
    'products.spray.coat.recoat.keep off.until',
    /"until" is missing.*the end of the forbidden gap/,
  ],
  [
    'until: 48 h',
    'until: 30 min',
    'until: 30',
    'products.spray.coat.recoat.keep off.until',
    /end of the forbidden gap is not after its beginning/,
  ],
  [
    'until: 48 h',
    'until: 1 h',
    'until: 1 h',
    'products.spray.coat.recoat.keep off.until',
    /end of the forbidden gap is not after its beginning/,
  ],
  [
    'from: 1 h',
    'from: 5 min',
    'from: 5 min',
    'products.spray.coat.recoat.keep off.from',
    /forbidden gap is not after the opening/,
  ],
  [
    'opens: 5 min, keep',
    'opens: 5 min, closes: 2 h, then: x y, keep',
    'closes: 2 h',
    'products.spray.coat.recoat.closes',
    /both a closing and a forbidden gap/,
  ],
  [
    'then: scuff 320 first, ',
    '',
    'closes: 12 h',
    'products.clear.coat.recoat.closes',
    /not said is what to do after that/,
  ],
  [
    'closes: 12 h, ',
    '',
    'then: scuff',
    'products.clear.coat.recoat.then',
    /the window never closes/,
  ],
  [
    'wrap: {opens: 3 d}',
    'wrap: {opens: soon}',
    'soon',
    'products.clear.coat.wrap.opens',
    /is "soon".*a length of time/,
  ],
  [
    'wrap: {opens: 3 d}',
    'wrap: {opens: 72}',
    'opens: 72',
    'products.clear.coat.wrap.opens',
    /is 72.*with its unit/,
  ],
  [
    'wrap: {opens: 3 d}',
    'wrap: {opens: -5 h}',
    '-5 h',
    'products.clear.coat.wrap.opens',
    /is "-5 h"/,
  ],
  [
    'wrap: {opens: 3 d}',
    'warp: {opens: 3 d}',
    'warp',
    'products.clear.coat.warp',
    /"warp" is no field of a coat.* Write wrap/,
  ],
  [
    '23 C 50 %',
    '23 C',
    'stated for: 23 C',
    'products.clear.stated for',
    /a temperature and a relative humidity/,
  ],
  [
    '23 C 50 %',
    '23 C 150 %',
    '150',
    'products.clear.stated for',
    /a temperature and a relative humidity/,
  ],
  [
    'dries: waterborne',
    'dries: waterbourne',
    'waterbourne',
    'products.clear.dries',
    /no way of drying.* Write waterborne/,
  ],
  [
    'closes: practice',
    'closes: practise',
    'practise',
    'products.clear.coat.recoat.source.closes',
    /Write practice/,
  ],
  [
    'kind: chemical',
    'kind: chemicle',
    'chemicle',
    'products.bleach.windows.b-on.kind',
    /Write chemical/,
  ],
  [
    'first stroke of B',
    'first strike of B',
    'strike',
    'products.bleach.windows.b-on.ended by',
    /a stamp such as/,
  ],
  ['loss: spoils', 'loss: spoiled', 'spoiled', 'products.bleach.windows.b-on.loss', /Write spoils/],
  [
    'soft: 5 min, hard',
    'sft: 5 min, hard',
    'sft',
    'products.bleach.windows.b-on.opens.sft',
    /Write soft/,
  ],
];

test.each(inProducts)('products: %s -> %s', (from, to, where, field, says) => {
  const text = changed(productsText, from, to);
  const library = withProducts(text);
  expect(library.products).toEqual({});
  const own = library.problems.filter((problem) => problem.file === 'products.yaml');
  const found = own.find((problem) => problem.field === field);
  expect(found).toMatchObject({ line: lineOf(text, where) });
  expect(`${found?.says} ${found?.todo}`).toMatch(says);
  // Schedules that name a product of that file are told which file to mend, not that the product is unknown.
  const others = library.problems.filter((problem) => problem.file === 'schedule.yaml');
  expect(others.map((problem) => problem.todo)).toEqual([
    'Mend products.yaml first.',
    'Mend products.yaml first.',
  ]);
});

test('minutes may be alike from low to high', () => {
  const text = changed(
    scheduleText,
    'typical: 15, low: 10, high: 30',
    'typical: 15, low: 15, high: 15',
  );
  expect(withSchedule(text).problems).toEqual([]);
});

test('all problems of a file come at once, in the order of its lines, and nothing of it is taken', () => {
  let text = changed(scheduleText, 'setup: 8', 'setup: eight');
  text = changed(text, 'class: scuff', 'class: scruff');
  text = changed(text, 'needs: [recoat]', 'needs: [racoat]');
  text = changed(text, 'product: clear', 'product: cleer');
  text = changed(text, 'id: coat-2', 'id: coat-1');
  const { problems, schedules } = withSchedule(text);
  expect(schedules).toEqual([]);
  expect(problems.map((problem) => problem.field)).toEqual([
    'steps[coat-1].product',
    'steps[scuff].class',
    'steps[scuff].setup',
    'steps[coat-1].id',
    'steps[coat-1].needs[1]',
  ]);
  const lines = problems.map((problem) => problem.line);
  expect(lines).toEqual([...lines].sort((one, other) => one - other));
});

test.each([
  ['an open bracket', 'steps: [\n  - a', 1],
  ['a tab for an indent', 'id: a\nsteps:\n\t- id: b', 3],
  ['a field twice', 'id: a\nname: b\nid: c', 3],
  ['an alias to nothing', 'id: *nobody', 1],
  ['two documents', 'id: a\n---\nid: b', 2],
  ['a tag that asks for a program', 'id: !!js/function "x"', 1],
])('YAML with %s is told with its line', (_, text, line) => {
  const { problems } = withSchedule(text);
  expect(problems).toMatchObject([{ file: 'schedule.yaml', line, expected: 'YAML' }]);
});

test('aliases that multiply, bottomless nesting and a huge file are refused, and quickly', () => {
  const rows = 'abcdefghij'.split('');
  const bomb = rows.map((name, index) => {
    const before = rows[index - 1];
    return `${name}: &${name} [${Array(9)
      .fill(before === undefined ? 'x' : `*${before}`)
      .join(', ')}]`;
  });
  for (const text of [bomb.join('\n'), '['.repeat(50_000), `id: ${'a'.repeat(600_000)}`]) {
    const { problems, schedules } = withSchedule(text);
    expect(schedules).toEqual([]);
    expect(problems.length).toBeGreaterThan(0);
  }
});

test.each([
  ['', 'The whole file is nothing.'],
  ['- one', 'The whole file is a list.'],
  ['just words', 'The whole file is "just words".'],
])('a file with %j is told what a file holds', (text, says) => {
  expect(told(withSchedule(text).problems)).toEqual([
    { line: 1, field: '', says, todo: 'Write fields with their values, one a line.' },
  ]);
});

test('a product that no file has is told as missing where there are none at all', () => {
  const { problems } = loadSchedules([{ path: 'schedule.yaml', text: scheduleText }]);
  expect(problems[0]).toMatchObject({
    field: 'steps[coat-1].product',
    says: '"clear" is no product.',
    todo: 'Take it out: there is not a product yet.',
  });
});

test('text that was cut off at its comma is told to need quotes', () => {
  const text = changed(productsText, 'then: scuff 320 first', 'then: scuff 320, then coat');
  const { problems } = withProducts(text);
  expect(problems[0]).toMatchObject({ line: lineOf(text, 'then coat'), found: 'then coat' });
  expect(problems[0]?.todo).toMatch(/Text with a comma inside braces needs quotes/);
});

test('one bad file takes none of the others down', () => {
  const { problems, schedules } = loadSchedules([
    productsFile,
    { path: 'schedule.yaml', text: scheduleText },
    { path: 'other.yaml', text: changed(scheduleText, 'id: two-coats', 'id: 7') },
  ]);
  expect(schedules.map((schedule) => schedule.id)).toEqual(['two-coats']);
  expect(problems.map((problem) => [problem.file, problem.field])).toEqual([['other.yaml', 'id']]);
});

/** The same windows written into a finishing schedule: its own products, and a step's own windows. */
const windowsInSchedule: readonly (readonly [string, string, RegExp])[] = [
  ['opens: 12 h, closes: 2 h, then: scuff 320 first', 'closes', /closing is not after its opening/],
  [
    'opens: 5 min, keep off: {from: 1 h, because: it wrinkles}',
    'keep off.until',
    /"until" is missing.*the end of the forbidden gap/,
  ],
];

test.each(windowsInSchedule)('a schedule’s own product: %s', (row, field, says) => {
  const text = `${scheduleText}products:
  own:
    name: Own can
    class: oil varnish
    dries: oxidative
    stated for: 23 C 50 %
    source: practice
    coat:
      recoat: {${row}}
`;
  const { problems } = withSchedule(text);
  const problem = problems.find((each) => each.field === `products.own.coat.recoat.${field}`);
  expect(problem).toMatchObject({ file: 'schedule.yaml', line: lineOf(text, row) });
  expect(`${problem?.says} ${problem?.todo}`).toMatch(says);
});
