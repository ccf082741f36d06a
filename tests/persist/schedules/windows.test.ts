import { expect, test } from 'vitest';
import { readScheduleFolders } from '../../../src/persist/schedules/index.ts';
import { hour, minute } from '../../../src/tracker/time/index.ts';
import type { Product } from '../../../src/tracker/trade/index.ts';
import { closesAt, opensAt, stateAt } from '../../../src/tracker/windows/index.ts';
import { coatOn, monday, oneStep, Work } from '../../outside/work.ts';
import { productsText, withProducts } from './texts.ts';

/** How what is written in products works once strokes and checks are made. */

const library = await readScheduleFolders({
  built: null,
  templates: new URL('../../../templates/', import.meta.url).pathname,
  own: null,
});

function product(id: string): Product {
  const found = library.products[id];
  if (found === undefined) throw new Error(`no product ${id}`);
  return found;
}

const lastStroke = monday + 20 * minute;
const coat = (id: string): Work => coatOn(product(id), 20 * minute);

test('a coat opens from its last stroke and closes from its first', () => {
  const recoat = coat('waterborne-clear').window('recoat');
  expect(opensAt(recoat)).toBe(lastStroke + 2 * hour);
  expect(closesAt(recoat, lastStroke)?.at).toBe(monday + 12 * hour);
  expect(stateAt(recoat, monday + 12 * hour)).toBe('late');
});

test('"not yet" adds a quarter of the wait, but never less than five minutes (common practice, no source)', () => {
  const adds = (id: string, window: string) =>
    product(id).windows.find((rule) => rule.id === window)?.notYetAdds;
  expect(adds('waterborne-clear', 'recoat')).toBe(30 * minute);
  const { products } = withProducts(productsText);
  expect(products['spray']?.windows[0]?.notYetAdds).toBe(5 * minute);
});

test('a coat without a first stroke counts from the pick-up, and says that it is assumed', () => {
  const work = new Work(oneStep(product('waterborne-clear')));
  work.act({ do: 'pick up', targets: [{ piece: work.piece.id, part: null }] }, monday);
  work.done(lastStroke);
  const recoat = work.window('recoat');
  expect(recoat.assumed).toBe(true);
  expect(closesAt(recoat, lastStroke)?.at).toBe(monday + 12 * hour);
});

test('"not yet" keeps a coat closed a quarter of its time longer; "ready" opens it at once', () => {
  const work = coat('waterborne-clear');
  const early = lastStroke + 2 * hour;
  work.check('not yet', work.window('scuff').key, early);
  expect(opensAt(work.window('scuff'))).toBe(early + 30 * minute);
  work.check('ready', work.window('scuff').key, early + 10 * minute);
  expect(stateAt(work.window('scuff'), early + 10 * minute)).toBe('open');
  const other = coat('waterborne-clear');
  other.check('ready', other.window('recoat').key, lastStroke + hour);
  expect(opensAt(other.window('recoat'))).toBe(lastStroke + hour);
});

test('glue that is found soft stays in clamps longer; firm to the touch opens no clamps early', () => {
  const glued = new Work(oneStep(product('pva-yellow')));
  glued.act({ do: 'first stroke', piece: glued.piece.id, part: null }, monday);
  glued.done(monday + 5 * minute);
  const clamps = () => glued.window('clamps-off');
  const opening = monday + 35 * minute;
  expect(opensAt(clamps())).toBe(opening);
  glued.check('ready', clamps().key, monday + 20 * minute);
  expect(opensAt(clamps())).toBe(opening);
  glued.check('not yet', clamps().key, opening);
  expect(opensAt(clamps())).toBe(opening + 10 * minute);
});

test('what can be tried is held back by "not yet": a stripper, and wood that dries', () => {
  for (const [id, rule, adds] of [
    ['solvent-stripper', 'scrape', 15 * minute],
    ['vinegar-rinse', 'dry', 6 * hour],
  ] as const) {
    const work = new Work(oneStep(product(id)));
    work.act({ do: 'first stroke', piece: work.piece.id, part: null }, monday);
    if (rule === 'dry') work.done(lastStroke);
    const opens = opensAt(work.window(rule)) ?? 0;
    work.check('not yet', work.window(rule).key, opens + minute);
    expect([id, opensAt(work.window(rule))]).toEqual([id, opens + minute + adds]);
  }
});

test('no check opens wrapping or cure, and none opens a two-part coat early', () => {
  const work = coat('waterborne-clear');
  for (const id of ['wrap', 'light-use', 'full-cure', 'dust-free']) {
    expect([id, work.window(id).rule.notYetAdds]).toEqual([id, undefined]);
  }
  const twoPart = coat('two-part-polyurethane');
  twoPart.check('ready', twoPart.window('recoat').key, lastStroke + hour);
  expect(opensAt(twoPart.window('recoat'))).toBe(lastStroke + 8 * hour);
  twoPart.check('not yet', twoPart.window('recoat').key, lastStroke + 8 * hour);
  expect(opensAt(twoPart.window('recoat'))).toBe(lastStroke + 10 * hour);
});

test('a forbidden gap begins within the hour of the first stroke, ends two days after the last, and no check opens it', () => {
  const enamel = product('aerosol-enamel');
  const recoat = coat('aerosol-enamel').window('recoat');
  const states = [lastStroke, lastStroke + 5 * minute, monday + hour, lastStroke + 48 * hour];
  expect(states.map((at) => stateAt(recoat, at))).toEqual(['before', 'closing', 'barred', 'open']);
  expect(
    JSON.stringify(enamel.windows.find((rule) => rule.id === 'recoat')?.stretches[3]),
  ).not.toContain('check');
});

test('between passes the next may go on; each pass starts the hour anew; after the last there is none', () => {
  const work = new Work(oneStep(product('aerosol-enamel'), undefined, 2));
  work.press(monday);
  work.press(monday + 4 * minute);
  const between = work.window('next-pass');
  expect(opensAt(between)).toBe(monday + 9 * minute);
  expect(closesAt(between, monday)?.at).toBe(monday + 60 * minute);
  work.press(monday + 10 * minute);
  expect(work.window('next-pass').closedAt).toBe(monday + 10 * minute);
  work.done(monday + 14 * minute);
  expect(
    work.windows().filter((window) => window.rule.id === 'next-pass' && window.closedAt === null),
  ).toEqual([]);
  expect(closesAt(work.window('recoat'), monday + 20 * minute)?.at).toBe(monday + 70 * minute);
});

test('a stripper is tried from half an hour on; topping up starts its wet time anew, film keeps it wet till it is off', () => {
  const work = new Work(oneStep(product('solvent-stripper')));
  work.press(monday);
  const scrape = () => work.window('scrape');
  expect(opensAt(scrape())).toBe(monday + 30 * minute);
  expect(closesAt(scrape(), monday)?.at).toBe(monday + 2 * hour);
  work.stamp('topped-up', monday + hour);
  expect(closesAt(scrape(), monday)?.at).toBe(monday + 3 * hour);
  work.stamp('covered', monday + 2 * hour);
  expect(closesAt(scrape(), monday)?.at).toBe(monday + 26 * hour);
  work.check('not yet', scrape().key, monday + 150 * minute);
  expect(opensAt(scrape())).toBe(monday + 165 * minute);
  work.done(monday + 3 * hour);
  expect(scrape().closedAt).toBe(monday + 3 * hour);
  expect(opensAt(work.window('dry'))).toBe(monday + 27 * hour);
});

test.each([
  ['soft', 5, 15],
  ['hard', 10, 20],
] as const)(
  'bleach on %swood: B from %i min, late at %i min, counted from the stroke and from nothing else',
  (wood, opens, late) => {
    const stamps = [
      { event: 'first-stroke', agent: 'A', says: 'A' },
      { event: 'first-stroke', agent: 'B', says: 'B' },
    ] as const;
    const work = new Work(oneStep(product('two-part-bleach'), stamps), wood);
    work.act(
      { do: 'pick up', targets: [{ piece: work.piece.id, part: null }] },
      monday - 9 * minute,
    );
    expect(work.windows()).toEqual([]);
    work.press(monday);
    const dwell = work.window('b-on');
    expect(dwell.rule.kind).toBe('chemical');
    expect(opensAt(dwell)).toBe(monday + opens * minute);
    expect(closesAt(dwell, monday)).toMatchObject({
      at: monday + late * minute,
      next: { meaning: 'late', loss: 'spoils', says: 'A dry: rinse, dry, start over' },
    });
  },
);

test('a stain is wiped section by section, each with its own clock', () => {
  const stamps = [
    { event: 'section-on', says: 'on', perSection: true },
    { event: 'section-off', says: 'wiped', perSection: true },
  ] as const;
  const work = new Work(oneStep(product('oil-stain'), stamps));
  work.press(monday);
  work.press(monday + 6 * minute);
  work.press(monday + 7 * minute);
  const wipes = work.windows().filter((window) => window.rule.id === 'wipe-off');
  expect(wipes.map((window) => [window.subject.section, window.closedAt])).toEqual([
    [1, monday + 6 * minute],
    [2, null],
  ]);
  const last = work.window('wipe-off');
  expect(stateAt(last, monday + 22 * minute)).toBe('late');
  work.done(monday + 12 * minute);
  expect(work.window('wipe-off').closedAt).toBe(monday + 12 * minute);
});

test('what an acid hardens is never learned to open sooner than its label', () => {
  const learnable = (id: string): readonly string[] =>
    product(id).windows.flatMap(({ id: window, stretches }) =>
      JSON.stringify(stretches).includes('"learnable":true') ? [window] : [],
    );
  expect(learnable('nitrocellulose-lacquer')).toEqual(['scuff', 'recoat']);
  expect(learnable('precatalysed-lacquer')).toEqual([]);
  expect(learnable('conversion-varnish')).toEqual([]);
});
