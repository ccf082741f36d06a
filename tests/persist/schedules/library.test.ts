import { cp, mkdtemp, mkdir, rm, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { expect, onTestFinished, test } from 'vitest';
import { readScheduleFolders } from '../../../src/persist/schedules/index.ts';
import { loadSchedules, readScheduleFile } from '../../../src/persist/schedules/parsing.ts';
import {
  changed,
  lineOf,
  productsFile,
  productsText,
  scheduleFile,
  scheduleText,
} from './texts.ts';

const shipped = loadSchedules([productsFile, scheduleFile]);

test('a schedule carries copies of the products that its steps name, and no others', () => {
  expect(shipped.problems).toEqual([]);
  const [schedule] = shipped.schedules;
  expect(Object.keys(schedule?.products ?? {})).toEqual(['clear']);
  expect(schedule?.products['clear']).toEqual(shipped.products['clear']);
  expect(schedule?.steps.map((step) => step.id)).toEqual(['coat-1', 'scuff', 'coat-2']);
  expect(Object.keys(shipped.products)).toEqual(['clear', 'spray', 'bleach']);
});

test('each window keeps where its opening and its closing come from', () => {
  expect(shipped.sources['clear']).toEqual({
    scuff: { opens: 'label of the can in this test', closes: 'label of the can in this test' },
    recoat: { opens: 'label of the can in this test', closes: 'common practice, no source' },
    wrap: { opens: 'label of the can in this test', closes: 'label of the can in this test' },
  });
});

test("the fingerprint names the content: not comments and indents, but every figure, also a product's", () => {
  const hashOf = (schedule: string, products = productsText): string => {
    const { schedules } = loadSchedules([
      { path: 'p.yaml', text: products },
      { path: 's.yaml', text: schedule },
    ]);
    return schedules[0]?.hash ?? 'none';
  };
  const before = hashOf(scheduleText);
  expect(before).toMatch(/^[0-9a-f]{16}$/);
  expect(hashOf(`# a remark\n${scheduleText}`)).toBe(before);
  expect(hashOf(changed(scheduleText, 'setup: 8', 'setup:    8'))).toBe(before);
  expect(hashOf(changed(scheduleText, 'setup: 8', 'setup: 9'))).not.toBe(before);
  expect(hashOf(scheduleText, changed(productsText, 'closes: 12 h', 'closes: 11 h'))).not.toBe(
    before,
  );
  expect(hashOf(scheduleText, changed(productsText, 'until: 48 h', 'until: 47 h'))).toBe(before);
});

test("a file of the user's replaces what came with the program, by id, and says so", () => {
  const own = [
    {
      path: 'mine/two.yaml',
      text: changed(scheduleText, 'name: Two coats', 'name: My two coats'),
      own: true,
    },
    {
      path: 'mine/can.yaml',
      text: changed(productsText, 'closes: 12 h', 'closes: 24 h'),
      own: true,
    },
  ];
  for (const library of [
    loadSchedules([...own, productsFile, scheduleFile]),
    loadSchedules(own, shipped),
  ]) {
    expect(library.problems).toEqual([]);
    expect(library.schedules.map((schedule) => schedule.name)).toEqual(['My two coats']);
    expect(JSON.stringify(library.schedules[0]?.products['clear'])).toContain(
      String(24 * 3_600_000),
    );
    expect(library.replacements.map((each) => each.says)).toContain(
      'mine/two.yaml replaces the finishing schedule "two-coats" that came with the program.',
    );
    expect(library.replacements.map((each) => each.id)).toEqual([
      'clear',
      'spray',
      'bleach',
      'two-coats',
    ]);
  }
});

test('a class that no rule knows is remarked on once, and the file counts', async () => {
  const { templates, own } = await folders();
  const cans = changed(
    productsText,
    'class: waterborne polyurethane',
    'class: Waterborn polyurethane',
  );
  await writeFile(join(own, 'cans.yaml'), cans);
  const { problems, remarks, products } = await readScheduleFolders({
    built: null,
    templates,
    own,
  });
  expect(problems).toEqual([]);
  expect(products['clear']?.productClass).toBe('Waterborn polyurethane');
  expect(remarks.map(({ file, line, field }) => [file, line, field])).toEqual([
    [join(own, 'cans.yaml'), lineOf(cans, 'Waterborn'), 'products.clear.class'],
  ]);
  expect(remarks[0]).toMatchObject({
    nearest: ['waterborne polyurethane'],
    todo: 'Its label and a sample board count. If waterborne polyurethane is meant, write that.',
  });
  await writeFile(join(own, 'cans.yaml'), cans.replace('Waterborn p', 'Waterborne P'));
  expect((await readScheduleFolders({ built: null, templates, own })).remarks).toEqual([]);
});

test("a schedule may bring its own product, which other schedules don't see", () => {
  const own = changed(
    productsText.slice(productsText.indexOf('products:')),
    '  clear:',
    '  my-clear:',
  );
  const text = changed(
    changed(scheduleText, 'id: two-coats', 'id: mine').replaceAll(
      'product: clear',
      'product: my-clear',
    ),
    'sources: {',
    'sources: {label: my label, ',
  );
  const library = loadSchedules([
    productsFile,
    scheduleFile,
    { path: 'mine.yaml', text: `${text}${own}` },
  ]);
  expect(library.problems).toEqual([]);
  expect(library.schedules.map((schedule) => Object.keys(schedule.products))).toEqual([
    ['clear'],
    ['my-clear'],
  ]);
  expect(Object.keys(library.products)).not.toContain('my-clear');
});

test("two of the program's, or two of the user's, with one id are a problem in the second file", () => {
  for (const own of [false, true]) {
    const { problems, schedules } = loadSchedules([
      { ...productsFile, own },
      { path: 'a.yaml', text: scheduleText, own },
      { path: 'b.yaml', text: scheduleText, own },
    ]);
    expect(schedules.length).toBe(1);
    expect(problems).toMatchObject([
      {
        file: 'b.yaml',
        line: 1,
        field: 'id',
        says: 'The finishing schedule "two-coats" is also in a.yaml.',
      },
    ]);
  }
});

test('one schedule alone can be read against products that are there', () => {
  const sourced = Object.fromEntries(
    Object.entries(shipped.products).map(([id, product]) => [id, { product, sources: {} }]),
  );
  const reading = readScheduleFile(scheduleFile, sourced);
  expect(reading.ok && reading.value.schedule).toEqual(shipped.schedules[0]);
});

async function folders(): Promise<{ templates: string; own: string; built: string }> {
  const place = await mkdtemp(join(tmpdir(), 'schedules-'));
  onTestFinished(() => rm(place, { recursive: true, force: true }));
  for (const name of ['templates/products', 'templates/schedules', 'own']) {
    await mkdir(join(place, name), { recursive: true });
  }
  await cp(join(import.meta.dirname, '../../../templates/rules'), join(place, 'templates/rules'), {
    recursive: true,
  });
  await writeFile(join(place, 'templates/products/all.yaml'), productsText);
  await writeFile(join(place, 'templates/schedules/two.yaml'), scheduleText);
  const built = join(place, 'templates.json');
  await writeFile(
    built,
    JSON.stringify({
      ...shipped,
      problems: undefined,
      replacements: undefined,
      remarks: undefined,
    }),
  );
  return { templates: join(place, 'templates'), own: join(place, 'own'), built };
}

test("folders: the program's and the user's are read together, built or not, with one outcome", async () => {
  const { templates, own, built } = await folders();
  await writeFile(join(own, 'mine.yml'), changed(scheduleText, 'id: two-coats', 'id: mine'));
  await writeFile(join(own, 'notes.txt'), 'no schedule');
  const fromYaml = await readScheduleFolders({ built: null, templates, own });
  const fromBuilt = await readScheduleFolders({ built, templates, own });
  expect(fromBuilt).toEqual(fromYaml);
  expect(fromBuilt.schedules.map((schedule) => schedule.id).sort()).toEqual(['mine', 'two-coats']);
  const alone = await readScheduleFolders({ built, templates: '/nowhere', own: join(own, 'none') });
  expect(alone).toEqual({ ...shipped, problems: [], replacements: [], remarks: [] });
});

test('folders: a built file that is missing or cut off falls back to the YAML', async () => {
  const { templates, own, built } = await folders();
  await writeFile(built, '{"schedules": [');
  for (const path of [built, join(templates, 'none.json')]) {
    const library = await readScheduleFolders({ built: path, templates, own });
    expect(library.schedules).toEqual(shipped.schedules);
  }
});

test("folders: a problem names the file by its path; a folder of the user's that is none is told", async () => {
  const { templates, own } = await folders();
  const bad = join(own, 'bad.yaml');
  await writeFile(bad, changed(scheduleText, 'setup: 8', 'setup: eight'));
  const library = await readScheduleFolders({ built: null, templates, own });
  expect(library.problems.map((problem) => problem.file)).toEqual([bad]);
  const notAFolder = await readScheduleFolders({ built: null, templates, own: bad });
  expect(notAFolder.problems).toMatchObject([{ file: bad, found: 'ENOTDIR' }]);
  const noTemplates = await readScheduleFolders({ built: null, templates: '/nowhere', own: null });
  expect(noTemplates.problems.map(({ found }) => found.slice(0, 6))).toEqual([
    'ENOENT',
    'ENOENT',
    'ENOENT',
  ]);
});
