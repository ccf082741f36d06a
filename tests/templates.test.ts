import { readdirSync, readFileSync } from 'node:fs';
import { Ajv2020 } from 'ajv/dist/2020.js';
import { expect, test } from 'vitest';
import { parse } from 'yaml';
import * as z from 'zod/mini';
import { builtTemplates } from '../scripts/build-templates.mjs';
import { schemaTexts } from '../scripts/schemas.mjs';
import { readRules, readScheduleFolders } from '../src/persist/schedules/index.ts';
import { product as storedProduct, step as storedStep } from '../src/persist/schemas/schedule.ts';
import { minute } from '../src/tracker/time/index.ts';
import { opensAt } from '../src/tracker/windows/index.ts';
import { monday, Work } from './outside/work.ts';
import { walk } from './outside/walk.ts';

const root = new URL('../', import.meta.url).pathname;
const templates = `${root}templates/`;
const library = await readScheduleFolders({ built: null, templates, own: null });
const schedules = library.schedules.map((schedule) => [schedule.id, schedule] as const);

const files = ['products', 'schedules'].flatMap((folder) =>
  readdirSync(`${templates}${folder}`).map((name) => ({
    folder,
    name,
    text: readFileSync(`${templates}${folder}/${name}`, 'utf8'),
  })),
);

test('every template is read without a problem', () => {
  expect(library.problems).toEqual([]);
  expect(library.replacements).toEqual([]);
  expect(library.remarks).toEqual([]);
  // In the order of their names.
  expect(schedules.map(([id]) => id)).toEqual([
    'aerosol-enamel',
    'alkyd-enamel',
    'bleach-and-clear',
    'danish-oil',
    'french-polish',
    'glue-up-repair',
    'limed-or-pore-filled',
    'milk-paint-and-oil',
    'sprayed-lacquer',
    'outdoor-varnish',
    'paint-and-clear',
    'paint-and-wax',
    'shellac-and-wax',
    'stained-softwood',
    'stencil-between-coats',
    'strip-stain-varnish',
    'tung-or-linseed-oil',
    'two-part-topcoat',
    'wiping-varnish',
  ]);
});

test.each(files)(
  '$folder/$name begins with the schema that an editor checks it by',
  ({ folder, text }) => {
    const schema = folder === 'products' ? 'products' : 'schedule';
    expect(text.split('\n')[0]).toBe(`# yaml-language-server: $schema=../schema/${schema}.json`);
  },
);

test('the JSON Schemas are those made from the forms; npm run schemas makes them anew', async () => {
  for (const [name, text] of await schemaTexts()) {
    expect(readFileSync(`${templates}schema/${name}`, 'utf8')).toBe(text);
  }
});

// ajv is a validator that knows nothing of the program: what an editor would say about the files.
test('every template passes its JSON Schema, and a misspelt field does not', () => {
  const ajv = new Ajv2020({ strict: true, allowUnionTypes: true });
  const schemaOf = (name: string) =>
    ajv.compile(JSON.parse(readFileSync(`${templates}schema/${name}.json`, 'utf8')));
  const forms = { products: schemaOf('products'), schedules: schemaOf('schedule') };
  for (const { folder, name, text } of files) {
    const check = folder === 'products' ? forms.products : forms.schedules;
    check(parse(text, { merge: true }));
    expect([name, check.errors]).toEqual([name, null]);
    check(parse(text.replace('\nsources:', '\nsauces:'), { merge: true }));
    expect(check.errors?.length).toBeGreaterThan(0);
  }
});

test('what the build writes beside the program is what the YAML says', async () => {
  const { schedules: read, products, sources } = library;
  const built = await builtTemplates(root);
  expect(JSON.parse(built.templates)).toEqual({ schedules: read, products, sources });
  const { rules } = await readRules({ built: null, templates });
  expect(JSON.parse(built.rules)).toEqual(rules);
});

test.each(schedules)('%s can be stored with a piece', (_, schedule) => {
  for (const step of schedule.steps) expect(z.safeParse(storedStep, step).error).toBeUndefined();
  for (const product of Object.values(schedule.products)) {
    expect(z.safeParse(storedProduct, product).error).toBeUndefined();
  }
});

test.each(schedules)("%s goes in the trade's order", (_, { steps }) => {
  const classes = steps.map((step) => step.stepClass);
  expect(classes.slice(0, 2)).toEqual(['look over', 'lead test']);
  expect(classes.at(-1)).toBe('refit, wrap');
  const firstCoat = classes.findIndex((name) => /coat|prime|stain|wax/.test(name));
  const lastBareGrit = classes.findLastIndex((name) => name.startsWith('sand bare'));
  if (firstCoat >= 0) expect(firstCoat).toBeGreaterThan(lastBareGrit);
  // Grits get finer until something is put on.
  const grits = steps
    .slice(0, firstCoat < 0 ? steps.length : firstCoat)
    .flatMap((step) => step.grit ?? []);
  expect(grits).toEqual([...grits].sort((one, other) => one - other));
  const inside = steps.findIndex(
    (step) => /insides|undersides? and back/.test(step.name) && step.cleanAir === true,
  );
  const show = steps.findIndex(
    (step) => /top last|show faces/.test(step.name) && /coat|enamel on show/.test(step.name),
  );
  // One step may take both, insides first.
  if (inside >= 0) expect(inside).toBeLessThanOrEqual(show);
});

test.each(schedules)(
  '%s: steps that raise dust, want clean air or give off fumes say so',
  (_, { steps, products }) => {
    for (const step of steps) {
      if (step.grit !== undefined) expect([step.id, step.dusty]).toEqual([step.id, true]);
      if (/^(coat|stain|prime)/.test(step.stepClass))
        expect([step.id, step.cleanAir]).toEqual([step.id, true]);
      const product = step.product === undefined ? undefined : products[step.product];
      if (product?.selfHeatingRags === true) expect([step.id, step.fumes]).toEqual([step.id, true]);
    }
  },
);

// Common practice, no source: coats one after the other take 1, 1.2, 1.4 and 1.7 times as long where they are brushed,
// 1, 1.1, 1.1 and 1.2 times where they are sprayed.
const timesOfCoats: ReadonlyMap<string, readonly number[]> = new Map([
  ['coat, brushed', [1, 1.2, 1.4, 1.7]],
  ['coat, sprayed', [1, 1.1, 1.1, 1.2]],
]);

test('each later coat of the same takes longer than the first', () => {
  const series = schedules.flatMap(([schedule, { steps }]) => {
    const coats = steps.filter(
      ({ stepClass, passes }) => timesOfCoats.has(stepClass) && passes === undefined,
    );
    // Coats of one surface: clear-1, clear-2, clear-3.
    const named = Map.groupBy(
      coats.filter(({ id }) => /^(?!.*feet).*-\d$/.test(id)),
      ({ id }) => id.slice(0, -2),
    );
    return [...named].map(([name, each]) => [`${schedule} ${name}`, each] as const);
  });
  const counts = series.map(([, coats]) => coats.length);
  expect([counts.length, Math.max(...counts)]).toEqual([14, 4]);
  for (const [name, coats] of series) {
    const [first] = coats;
    const times = timesOfCoats.get(first?.stepClass ?? '') ?? [];
    for (const [index, { minutes }] of coats.entries())
      for (const end of ['typical', 'low', 'high'] as const)
        expect([name, end, minutes[end]]).toEqual([
          name,
          end,
          Math.round((first?.minutes[end] ?? 0) * (times[index] ?? 0)),
        ]);
  }
});

test('minutes for eight pulls, and three joints of a glue-up', () => {
  const all = schedules.flatMap(([id, { steps }]) => steps.map((step) => [id, step] as const));
  const joints = all.filter(([, { driver }]) => driver === 'joints');
  expect(joints).toHaveLength(7);
  expect(joints.map(([id, { minutesFor }]) => [id, minutesFor])).toEqual(
    joints.map(() => ['glue-up-repair', 3]),
  );
  const fittings = all.filter(([, { driver }]) => driver === 'fittings');
  expect(fittings).toHaveLength(36);
  expect(fittings.every(([, { minutesFor }]) => minutesFor === undefined)).toBe(true);
});

test('nothing is called what no shop can promise', () => {
  for (const { text } of files) expect(text).not.toMatch(/\bsafe/i);
});

test('Space asks for A, then B, then done; glue, clamps, done; a stain section on and wiped', () => {
  const pressesOf = (id: string): readonly string[] => {
    const schedule = library.schedules.find((each) => each.id === id);
    if (schedule === undefined) throw new Error(`no schedule ${id}`);
    return walk(new Work(schedule), {}).map(({ pressed }) => pressed);
  };
  const bleach = pressesOf('bleach-and-clear');
  expect(bleach.slice(bleach.lastIndexOf('A, first stroke on'))).toMatchObject({
    0: 'A, first stroke on',
    1: 'B, first stroke on',
    2: 'done bleach',
  });
  const glue = pressesOf('glue-up-repair');
  expect(glue.slice(glue.indexOf('glue on'))).toMatchObject({
    0: 'glue on',
    1: 'in clamps',
    2: 'done glue-up',
  });
  const stain = pressesOf('strip-stain-varnish');
  expect(stain.slice(stain.indexOf('section 1 on'))).toMatchObject({
    0: 'section 1 on',
    1: 'section 1 wiped',
    2: 'section 2 on',
    3: 'section 2 wiped',
    4: 'done stain',
  });
  expect(pressesOf('aerosol-enamel')).toEqual(
    expect.arrayContaining([
      'pass 1 of 3, first stroke on',
      'pass 1 of 3, last stroke',
      'pass 3 of 3, first stroke on',
    ]),
  );
});

test('a second round of bleach within the step starts its own dwell', () => {
  const schedule = library.schedules.find((each) => each.id === 'bleach-and-clear');
  if (schedule === undefined) throw new Error('no schedule');
  const bleach = schedule.steps.filter((step) => step.id === 'bleach');
  const work = new Work({ ...schedule, steps: bleach });
  work.press(monday);
  work.press(monday + 10 * minute);
  work.act({ do: 'first stroke', piece: work.piece.id, part: null }, monday + 60 * minute);
  const dwell = work.window('b-on');
  expect(dwell.begunAt).toBe(monday + 60 * minute);
  expect(dwell.closedAt).toBeNull();
  expect(opensAt(dwell)).toBe(monday + 70 * minute);
});
