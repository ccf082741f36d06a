import fc from 'fast-check';
import { expect, test } from 'vitest';
import { parse } from 'yaml';
import { tellProblem } from '../../../src/persist/schedules/index.ts';
import { loadSchedules } from '../../../src/persist/schedules/parsing.ts';
import { productsFile, productsText, scheduleText } from './texts.ts';

const productsBefore = Object.keys(loadSchedules([productsFile]).products).length;

/** A file of products may hold none. However that is written, there is then nothing to take and nothing wrong. */
function holdsNoProducts(text: string): boolean {
  try {
    const file: unknown = parse(text, { merge: true });
    if (typeof file !== 'object' || file === null || !('products' in file)) return false;
    const { products } = file;
    return typeof products === 'object' && products !== null && Object.keys(products).length === 0;
  } catch {
    return false;
  }
}

/** Whatever a file holds: never an exception; either it is taken or it has problems, each inside the file. */
function holds(text: string): void {
  const { problems, schedules, products } = loadSchedules([
    productsFile,
    { path: 'any.yaml', text },
  ]);
  const taken = schedules.length + Object.keys(products).length - productsBefore;
  expect(taken > 0 || problems.length > 0 || holdsNoProducts(text)).toBe(true);
  const lines = text.split(/\r\n|\r|\n/).length;
  for (const problem of problems) {
    expect(problem.line).toBeGreaterThanOrEqual(1);
    expect(problem.line).toBeLessThanOrEqual(lines);
    expect(problem.column).toBeGreaterThanOrEqual(1);
    expect(problem.says).not.toBe('');
    expect(tellProblem(problem)).toContain('any.yaml, line ');
  }
}

test('random text', () => {
  fc.assert(fc.property(fc.string({ unit: 'binary', maxLength: 400 }), holds), { numRuns: 300 });
});

const yamlish = fc.constantFrom(
  ...[
    'id',
    'steps',
    'products',
    'sources',
    'needs',
    ': ',
    '- ',
    '\n',
    '  ',
    '[',
    ']',
    '{',
    '}',
    '&a',
    '*a',
    '<<',
    '!!map',
  ],
  ...[
    '"',
    "'",
    '|',
    '>',
    '#',
    '?',
    '__proto__',
    'constructor',
    'toString',
    'null',
    '~',
    '1e999',
    '.nan',
    '2 h',
    '\t',
    '---',
  ],
);

test('text made of what YAML is made of', () => {
  fc.assert(
    fc.property(fc.array(yamlish, { maxLength: 40 }), (pieces) => {
      holds(pieces.join(''));
    }),
    { numRuns: 1000 },
  );
});

test('good files with something cut out, put in or exchanged', () => {
  const edit = fc.record({
    text: fc.constantFrom(scheduleText, productsText),
    at: fc.double({ min: 0, max: 1, noNaN: true }),
    cut: fc.nat({ max: 40 }),
    put: fc.oneof(fc.string({ maxLength: 8 }), yamlish),
  });
  fc.assert(
    fc.property(edit, ({ text, at, cut, put }) => {
      const from = Math.floor(at * text.length);
      holds(text.slice(0, from) + put + text.slice(from + cut));
    }),
    { numRuns: 600 },
  );
});

const values: fc.Arbitrary<unknown> = fc.letrec((tie) => ({
  value: fc.oneof(
    { maxDepth: 3 },
    fc.constantFrom(null, true, 1, -1, 'recoat', '2 h', 'first stroke', 'clear', ''),
    fc.array(tie('value'), { maxLength: 3 }),
    fc.dictionary(
      fc.constantFrom(
        'id',
        'name',
        'steps',
        'windows',
        'coat',
        'recoat',
        'opens',
        'keep off',
        '__proto__',
        'hasOwnProperty',
      ),
      tie('value'),
      { maxKeys: 4 },
    ),
  ),
})).value;

test('well-formed files with any values in any field', () => {
  const fields = fc.dictionary(
    fc.constantFrom('id', 'name', 'summary', 'sources', 'source', 'products', 'steps'),
    values,
  );
  fc.assert(
    fc.property(fields, (file) => {
      holds(JSON.stringify(file));
    }),
    { numRuns: 500 },
  );
});
