import { expect, test } from 'vitest';
import { readScheduleFolders } from '../../src/persist/schedules/index.ts';
import { day, hour, minute } from '../../src/tracker/time/index.ts';
import type { PlannedStamp, Product } from '../../src/tracker/trade/index.ts';
import { opensAt, stateAt, type Milestone, type Window } from '../../src/tracker/windows/index.ts';
import { monday, oneStep, Work } from './work.ts';

/**
 * Figures that are common practice and have no source can't be checked against one. Here they are only checked for
 * sense, and for being marked as what they are.
 */

const library = await readScheduleFolders({
  built: null,
  templates: new URL('../../templates/', import.meta.url).pathname,
  own: null,
});
const products = Object.entries(library.products);

const commonPractice = 'common practice, no source';
/** Words by which a source names a publication. */
const publication = /\d{4}|UFGS|TM 43|FPL|table|manual/;

test('there are the products of the first schedules and a good dozen of classes more', () => {
  expect(products.length).toBeGreaterThan(40);
});

test.each(products)('%s: every window says where its figures come from', (id, product) => {
  const rules = [...product.windows, ...(product.byWood?.hard ?? [])];
  expect(Object.keys(library.sources[id] ?? {}).sort()).toEqual(
    rules.map((rule) => rule.id).sort(),
  );
  for (const { opens, closes } of Object.values(library.sources[id] ?? {})) {
    for (const source of [opens, closes]) {
      if (source !== commonPractice) expect(source).toMatch(publication);
    }
  }
});

/** The stamps that begin a product's windows, in an order in which they can be made. */
function stampsFor(product: Product): readonly PlannedStamp[] {
  const rules = [...product.windows, ...(product.byWood?.hard ?? [])];
  if (rules.some((rule) => rule.scope === 'section')) {
    return [
      { event: 'section-on', says: 'on', perSection: true },
      { event: 'section-off', says: 'wiped', perSection: true },
    ];
  }
  const agents = [...new Set(rules.map((rule) => rule.begins.agent))].sort();
  const strokes = agents.map((agent) => ({
    event: 'first-stroke' as const,
    says: 'on',
    ...(agent === undefined ? {} : { agent }),
  }));
  return rules.some((rule) => rule.begins.events.includes('mixed'))
    ? [{ event: 'mixed', says: 'mixed' }, ...strokes]
    : strokes;
}

/** Everything stamped 2 minutes apart, then done. */
function workedThrough(product: Product): readonly Window[] {
  const stamps = stampsFor(product);
  const work = new Work(oneStep(product, stamps));
  stamps.forEach((_, index) => {
    work.press(monday + index * 2 * minute);
  });
  work.done(monday + stamps.length * 2 * minute);
  return work.windows();
}

test.each(products)(
  '%s: each window has an opening, in order, and states never go back',
  (_, product) => {
    const windows = workedThrough(product);
    const rules = [...product.windows, ...(product.byWood?.hard ?? [])];
    const between = rules.filter((rule) => rule.closedBy.by === 'next pass').length;
    expect(new Set(windows.map((window) => window.rule.id)).size).toBe(rules.length - between);
    for (const window of windows) {
      const { stretches } = window;
      expect(stretches.some((stretch) => stretch.meaning === 'go')).toBe(true);
      stretches.forEach((stretch, index) => {
        expect(stretch.ends ?? Number.POSITIVE_INFINITY).toBeGreaterThan(stretch.begins);
        expect(stretch.begins).toBe(index === 0 ? window.begunAt : stretches[index - 1]?.ends);
      });
      // What is lost is said, with what to do about it.
      for (const stretch of stretches) {
        if (stretch.loss !== 'costs nothing') expect(stretch.says?.length).toBeGreaterThan(5);
      }
      const open = { ...window, closedAt: null };
      const order = ['before', 'open', 'closing', 'barred', 'late'];
      const seen: string[] = [];
      for (let at = window.begunAt; at < window.begunAt + 40 * day; at += 30 * minute) {
        const state = stateAt(open, at);
        if (seen.at(-1) !== state) seen.push(state);
      }
      const barred = seen.indexOf('barred');
      const once = barred < 0 ? seen : seen.slice(0, barred + 1);
      expect(once.map((state) => order.indexOf(state))).toEqual(
        once.map((state) => order.indexOf(state)).sort((one, other) => one - other),
      );
      if (barred >= 0) expect(seen.slice(barred + 1)).toEqual(['open']);
    }
  },
);

/** Pairs of milestones of which the first is never reached after the second. */
const inOrder: readonly (readonly [Milestone, Milestone])[] = [
  ['dust-free', 'scuff'],
  ['dust-free', 'turn over'],
  ['recoat', 'turn over'],
  ['turn over', 'wrap'],
  ['scuff', 'rub out'],
  ['refit', 'wrap'],
  ['light use', 'full cure'],
  ['rub out', 'full cure'],
  ['wrap', 'full cure'],
];

test.each(products)(
  '%s: milestones come in the order in which a coat gains its hardness',
  (_, product) => {
    const opened = new Map(
      workedThrough(product).map((window) => [window.rule.milestone, opensAt(window) ?? 0]),
    );
    for (const [earlier, later] of inOrder) {
      const [one, other] = [opened.get(earlier), opened.get(later)];
      if (one !== undefined && other !== undefined)
        expect(one, `${earlier}, ${later}`).toBeLessThanOrEqual(other);
    }
  },
);

test.each(products)(
  '%s: a figure that the air can move says its climate and its direction',
  (_, product) => {
    for (const rule of [
      ...product.windows,
      ...(product.byWood?.soft ?? []),
      ...(product.byWood?.hard ?? []),
    ]) {
      const spans = JSON.stringify(rule.stretches);
      for (const [, chemistry] of spans.matchAll(/"chemistry":"([^"]+)"/g)) {
        if (chemistry !== 'reaction')
          expect(spans).toMatch(/"statedFor":\{"tempC":[\d.]+,"rh":\d+\}.*"may":"(grow|shrink)"/);
      }
      const learned = spans.includes('"learnable":true');
      if (learned) {
        expect(['scuff', 'recoat']).toContain(rule.milestone);
        expect(['waterborne', 'oxidative', 'evaporative']).toContain(product.chemistry);
        expect(rule.stretches.some((stretch) => stretch.meaning === 'keep off')).toBe(false);
      }
    }
  },
);

test('what burns by itself or kills is marked', () => {
  for (const [id, product] of products) {
    if (product.chemistry === 'oxidative' && !id.startsWith('aerosol')) {
      expect([id, product.selfHeatingRags]).toEqual([id, true]);
    }
    const kills = /blinds? and burns?|an asthma that stays|have killed|poisons|explodes/;
    expect([id, product.deadly === true]).toEqual([id, kills.test(product.cautions.join(' '))]);
    expect([id, product.cautions.length > 0]).toEqual([id, true]);
  }
});

test('a full day passes before glue or a coat is loaded, but for wax', () => {
  for (const [id, product] of products) {
    if (product.productClass === 'paste wax') continue;
    const use = workedThrough(product).find((window) => window.rule.milestone === 'light use');
    if (use) expect((opensAt(use) ?? 0) - monday, id).toBeGreaterThanOrEqual(24 * hour);
  }
});
