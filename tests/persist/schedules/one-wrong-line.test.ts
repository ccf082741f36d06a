import { expect, test } from 'vitest';
import { tellProblems, type Problem } from '../../../src/persist/schedules/index.ts';
import { changed, productsText, withProducts } from './texts.ts';

/** What is wrong in the products file; the schedule that names it is only told to wait for it. */
const problemsOf = (text: string): readonly Problem[] =>
  withProducts(text).problems.filter(({ file }) => file === 'products.yaml');

const lines = productsText.split('\n');
const written = lines.flatMap((line, index) => (line.trim() === '' ? [] : [index]));

/** The file with one of its lines written otherwise. */
const withLine = (index: number, otherwise: string): string =>
  lines.map((line, each) => (each === index ? otherwise : line)).join('\n');

const slips: readonly (readonly [string, (line: string) => string])[] = [
  ['a tab before it', (line) => `\t${line}`],
  ['a space too many', (line) => ` ${line}`],
  ['a space too few', (line) => line.replace(/^ /, '')],
  ['no colon', (line) => line.replace(':', '')],
  ['no space after the colon', (line) => line.replace(': ', ':')],
  ['a quote at its end', (line) => `${line}"`],
  ['a brace not closed', (line) => line.replace(/}$/, '')],
];

test.each(slips)(
  'one line with %s is told in one to three lines, at that line or near it',
  (_, slip) => {
    for (const index of written) {
      const text = withLine(index, slip(lines[index] ?? ''));
      const problems = problemsOf(text);
      const toldHere = tellProblems(problems);
      // "windows:" one step to the left, and all below it is another product's: then the rest is told further down.
      expect(toldHere.length, text).toBeLessThanOrEqual(3);
      const [first] = problems;
      if (first === undefined) continue;
      const near = Math.abs(first.line - (index + 1)) <= 3;
      expect(near || first.says.includes(`line ${index + 1}`), `${text}${first.says}`).toBe(true);
    }
  },
);

test.each([
  ['\t  scuff: {opens: 2 h}', 'The line is indented with a tab.'],
  [
    '     scuff: {opens: 2 h}',
    'The line is indented by 6, further than line 12, which has its value already.',
  ],
  ['      scuff {opens: 2 h}', '"scuff" has no colon with a space after it.'],
  ['      scuff:{opens: 2 h}', '"scuff" has no colon with a space after it.'],
  ['      scuff: {opens: 2 h', 'A brace or bracket of this line is not closed.'],
  ['      recoat: {opens: 2 h}', '"recoat" stands twice in one group.'],
])('%j is told as what it is', (line, says) => {
  const text = changed(productsText, '      scuff: {opens: 2 h}', line);
  expect(problemsOf(text)).toMatchObject([{ says }]);
});

test('a source that is not listed is told once, however many rows name it', () => {
  const problems = problemsOf(changed(productsText, '  practice:', '  practise:'));
  expect(problems.length).toBeGreaterThan(2);
  expect(tellProblems(problems)).toEqual([
    expect.stringMatching(
      /"practice" is no source.* Write practise\. The same in line \d+, \d+\.$/,
    ),
  ]);
});

test('a mistyped name is told once, not also as missing', () => {
  const text = changed(productsText, 'dries: waterborne', 'dris: waterborne');
  expect(tellProblems(problemsOf(text))).toEqual([
    'products.yaml, line 8, products.clear.dris: "dris" is no field of a product. Write dries, or take it out.',
  ]);
});

test('of many problems the first few are told, and that there are more', () => {
  const text = productsText.replaceAll(/^( {4}\w+):/gm, '$1ing:');
  const all = tellProblems(problemsOf(text));
  expect(all).toHaveLength(6);
  expect(all.at(-1)).toMatch(/: \d+ more, told once these are mended\.$/);
});
