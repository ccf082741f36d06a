import { readFileSync } from 'node:fs';
import { Ajv2020 } from 'ajv/dist/2020.js';
import { expect, test } from 'vitest';
import { parse } from 'yaml';
import { readRules, readScheduleFolders } from '../src/persist/schedules/index.ts';
import { bareWood, classesOf, oldFinish, over } from '../src/tracker/trade/index.ts';

const templates = new URL('../templates/', import.meta.url).pathname;
const { rules, problems } = await readRules({ built: null, templates });
const library = await readScheduleFolders({ built: null, templates, own: null });
const classes = classesOf(rules.over);

test('the rules are read without a problem', () => {
  expect(problems).toEqual([]);
});

test('every class of a product that comes with the program stands in a group of the table', () => {
  const known = new Set(classes.map((each) => each.toLowerCase()));
  const missing = Object.values(library.products)
    .map(({ productClass }) => productClass)
    .filter((each) => !known.has(each.toLowerCase()));
  expect(missing).toEqual([]);
});

test('every pair of classes is decided, whatever is put on', () => {
  const putOn = classes.filter((each) => each !== bareWood && each !== oldFinish);
  const open = classes.flatMap((below) =>
    putOn
      .filter((above) => over(rules.over, below, above).row === null)
      .map((above) => [below, above]),
  );
  expect(open).toEqual([]);
});

test('every row of the table decides a pair that no row above it decides', () => {
  const used = new Set(
    classes.flatMap((below) => classes.map((above) => over(rules.over, below, above).row)),
  );
  const idle = rules.over.rows.filter((row) => !used.has(row)).map(({ why }) => why);
  expect(idle).toEqual([]);
});

test('every rule has a source in words, a row that is no yes says what to do instead', () => {
  const { over: table, pairs, neutralisers, cautions } = rules;
  for (const { source } of [...table.rows, ...pairs, ...neutralisers, ...cautions])
    expect(source.length).toBeGreaterThan(8);
  for (const { verdict, instead } of table.rows)
    if (verdict !== 'yes') expect(instead).not.toBe('');
});

test('no rule says "safe", and none is loud', () => {
  const said = [
    ...rules.over.rows.flatMap(({ why, instead = '' }) => [why, instead]),
    ...rules.pairs.flatMap(({ makes, instead }) => [makes, instead]),
    ...rules.neutralisers.flatMap(({ right, because }) => [right, because]),
    ...rules.cautions.map(({ says }) => says),
  ];
  expect(said.filter((words) => /\bsafe|!/i.test(words))).toEqual([]);
});

test('nothing that comes with the program uses methylene chloride', () => {
  const shipped = JSON.stringify([library.schedules, library.products]);
  expect(/methylene chloride|dichloromethane/i.test(shipped)).toBe(false);
});

test.each(['over', 'cautions'])('%s.yaml passes its JSON Schema, misspelt it does not', (name) => {
  const text = readFileSync(`${templates}rules/${name}.yaml`, 'utf8');
  expect(text.split('\n')[0]).toBe(`# yaml-language-server: $schema=../schema/${name}.json`);
  const schema: object = JSON.parse(
    readFileSync(`${templates}schema/${name}.json`, 'utf8'),
  ) as object;
  const check = new Ajv2020({ strict: true, allowUnionTypes: true, strictTuples: false }).compile(
    schema,
  );
  check(parse(text, { merge: true }));
  expect(check.errors).toBeNull();
  check(parse(text.replace('\nsources:', '\nsauces:'), { merge: true }));
  expect(check.errors?.length).toBeGreaterThan(0);
});
