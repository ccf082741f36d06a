import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { expect, test } from 'vitest';
import { readScheduleFolders } from '../src/persist/schedules/index.ts';
import { nextAct, standingOf } from '../src/tracker/bench/index.ts';
import { day, hour, minute, type Instant, type Milliseconds } from '../src/tracker/time/index.ts';
import type { PlannedStamp, Product } from '../src/tracker/trade/index.ts';
import { stateAt, stretchAt, type WindowState } from '../src/tracker/windows/index.ts';
import { atTheLabel, monday, oneStep, Work } from './outside/work.ts';

/**
 * Every kind of window that the bench knows, each walked through with a product that comes with the program. The figures
 * are the products' own; what is tried here is that they are worked by the one model, each with the keys it needs.
 */

const root = join(dirname(fileURLToPath(import.meta.url)), '..');
const library = await readScheduleFolders({
  built: null,
  templates: join(root, 'templates'),
  own: null,
});

function product(id: string): Product {
  const found = library.products[id];
  if (found === undefined) throw new Error(`no product ${id}`);
  return found;
}

const on: PlannedStamp = { event: 'first-stroke', says: 'first stroke on' };
const using = (id: string, stamps: readonly PlannedStamp[] = [on], passes?: number): Work =>
  new Work(oneStep(product(id), stamps, passes));

/** What a window says so long after the morning: `{ '5 min': 'before' }` as pairs. */
const walk = (
  work: Work,
  id: string,
  states: readonly (readonly [Milliseconds, WindowState])[],
): void => {
  const window = work.window(id);
  expect(states.map(([ms]) => [ms / minute, stateAt(window, monday + ms)])).toEqual(
    states.map(([ms, state]) => [ms / minute, state]),
  );
};
const says = (work: Work, id: string, now: Instant): string | undefined =>
  stretchAt(work.window(id), now).says;

test('a dwell with a target and a "still wet" end', () => {
  const strokes = ['A', 'B'].map((agent): PlannedStamp => ({ ...on, agent }));
  const work = using('two-part-bleach', strokes);
  work.press(monday);
  walk(work, 'b-on', [
    [9 * minute, 'before'],
    [10 * minute, 'closing'],
    [20 * minute, 'late'],
  ]);
  expect(says(work, 'b-on', monday + 21 * minute)).toMatch(/^A dry: rinse, dry, start over$/);
  work.press(monday + 12 * minute);
  walk(work, 'b-on', [[21 * minute, 'done']]);
});

test('wipe-off in sections, each with its own window', () => {
  const work = using('oil-stain', [
    { event: 'section-on', says: 'on', perSection: true },
    { event: 'section-off', says: 'wiped', perSection: true },
  ]);
  work.press(monday);
  work.press(monday + 4 * minute);
  work.press(monday + 5 * minute);
  const [first, second] = work.windows().filter(({ rule }) => rule.id === 'wipe-off');
  expect(stateAt(first!, monday + 6 * minute)).toBe('done');
  expect(stateAt(second!, monday + 6 * minute)).toBe('before');
  expect(stateAt(second!, monday + 20 * minute)).toBe('late');
});

test('a stripper kept wet: topped up it lasts anew, under film for hours till that is off', () => {
  const work = using('solvent-stripper');
  work.press(monday);
  walk(work, 'scrape', [
    [29 * minute, 'before'],
    [30 * minute, 'open'],
    [2 * hour, 'late'],
  ]);
  work.stamp('topped-up', monday + hour);
  walk(work, 'scrape', [
    [2 * hour, 'closing'],
    [3 * hour, 'late'],
  ]);
  work.stamp('covered', monday + 90 * minute);
  walk(work, 'scrape', [
    [20 * hour, 'open'],
    [25.5 * hour, 'late'],
  ]);
  work.stamp('uncovered', monday + 10 * hour);
  walk(work, 'scrape', [
    [11 * hour, 'closing'],
    [12 * hour, 'late'],
  ]);
  // Covered again it lasts again, and topping up under way takes nothing from that.
  work.stamp('covered', monday + 11 * hour);
  work.stamp('topped-up', monday + 11 * hour);
  walk(work, 'scrape', [
    [30 * hour, 'open'],
    [35 * hour, 'late'],
  ]);
});

test('what went on in sections has its first stroke there, and nothing of it is assumed', () => {
  const filler = using('oil-pore-filler', [
    { event: 'section-on', says: 'on', perSection: true },
    { event: 'section-off', says: 'rubbed off', perSection: true },
  ]);
  filler.act({ do: 'pick up', targets: [{ piece: filler.piece.id, part: null }] }, monday);
  filler.press(monday + 5 * minute);
  filler.press(monday + 12 * minute);
  filler.done(monday + 20 * minute);
  expect(filler.window('recoat')).toMatchObject({
    begunAt: monday + 5 * minute,
    assumed: false,
  });
});

test('turned over days too early is told in hours', () => {
  const work = using('varnish');
  work.press(monday);
  work.done(monday + 10 * minute);
  const turned = { do: 'stamp', piece: work.piece.id, part: null, event: 'turned' } as const;
  expect(work.act(turned, monday + 70 * minute).says).toContain('turned 47 h 00 early, ');
});

test('a coat that goes on in the gap of the one before it is told what comes of that', () => {
  const gap = product('oil-polyurethane-two-windows');
  const warnsAt = (after: Milliseconds): string | undefined => {
    const schedule = oneStep(gap);
    const [first, second] = schedule.steps;
    const coats = [
      first!,
      { ...second!, needs: ['recoat' as const], product: gap.id, stamps: [on] },
    ];
    const work = new Work({ ...schedule, steps: coats });
    work.press(monday);
    work.done(monday + 10 * minute);
    const intent = { do: 'first stroke', piece: work.piece.id, part: null } as const;
    return work.act(intent, monday + after).warns;
  };
  expect(warnsAt(hour)).toBeUndefined();
  expect(warnsAt(3 * hour)).toBe('Keep off: recoating now wrinkles it');
  expect(warnsAt(73 * hour)).toBeUndefined();
});

/** The window that a piece's row tells so long after the morning. */
const shown = (work: Work, after: Milliseconds): string => {
  const { window } = standingOf(work.bench, work.piece, monday + after, atTheLabel);
  return `${window?.rule.verb}: ${window === null ? '' : stateAt(window, monday + after)}`;
};

test('between passes the bench shows the next one and its gap, and not yet what waits for the whole coat', () => {
  const work = using('aerosol-enamel', [on], 3);
  work.press(monday);
  work.press(monday + 2 * minute);
  expect(shown(work, 3 * minute)).toBe('next pass: before');
  expect(shown(work, 8 * minute)).toBe('next pass: closing');
  expect(shown(work, 2 * hour)).toBe('next pass: barred');
  work.press(monday + 9 * minute);
  work.press(monday + 11 * minute);
  work.press(monday + 20 * minute);
  work.done(monday + 22 * minute);
  expect(shown(work, 23 * minute)).toMatch(/: before$/);
  expect(shown(work, 23 * minute)).not.toContain('next pass');
});

test('while it works or hazes the bench shows that, and not yet the drying that its last stroke will begin', () => {
  const stripper = using('solvent-stripper');
  stripper.press(monday);
  expect(shown(stripper, 10 * minute)).toBe('test scrape: before');
  stripper.act({ do: 'put down' }, monday + 11 * minute);
  expect(shown(stripper, 12 * minute)).toBe('test scrape: before');
  expect(shown(stripper, hour)).toBe('test scrape: closing');
  expect(shown(stripper, 3 * hour)).toBe('test scrape: late');
  stripper.done(monday + 4 * hour);
  expect(shown(stripper, 5 * hour)).toBe('sand: before');

  const filler = using('oil-pore-filler', [
    { event: 'section-on', says: 'on', perSection: true },
    { event: 'section-off', says: 'rubbed off', perSection: true },
  ]);
  filler.press(monday);
  filler.act({ do: 'put down' }, monday + minute);
  expect(shown(filler, 2 * minute)).toBe('rub off across the grain: before');
  expect(shown(filler, 30 * minute)).toBe('rub off across the grain: late');
});

test('coats in one step, with flash-off between them: "pass 2 of 3"', () => {
  const work = using('nitrocellulose-lacquer', [on], 3);
  expect(work.press(monday)).toContain('pass 1 of 3');
  work.press(monday + 5 * minute);
  walk(work, 'next-pass', [
    [14 * minute, 'before'],
    [15 * minute, 'open'],
  ]);
  expect(nextAct(work.bench, work.piece, null, { now: monday, sense: atTheLabel }).says).toContain(
    'pass 2 of 3',
  );
  expect(work.window('next-pass').nextPass).toBe('pass 2 of 3');
  work.press(monday + 16 * minute);
  work.press(monday + 20 * minute);
  work.press(monday + 31 * minute);
  work.done(monday + 40 * minute);
  expect(work.piece.finishes.at(-1)?.pass).toBe(3);
  walk(work, 'recoat', [
    [99 * minute, 'before'],
    [100 * minute, 'open'],
  ]);
});

test('repeated until it is right: the next bodying session counts from the last', () => {
  const plan = oneStep(product('french-polish'));
  const [it, then] = plan.steps;
  const work = new Work({ ...plan, steps: [{ ...it!, untilRight: true }, then!] });
  const session = { do: 'first stroke', piece: work.piece.id, part: null } as const;
  work.press(monday);
  work.act(session, monday + 13 * hour);
  expect(work.piece.stamps.map(({ pass }) => pass)).toEqual([1, 2]);
  work.done(monday + 14 * hour);
  walk(work, 'recoat', [
    [25.9 * hour, 'before'],
    [26 * hour, 'open'],
  ]);
});

test('parts coated one after another in one step: each has its window by its own stamps', () => {
  const work = using('shellac');
  const { id: piece } = work.piece;
  work.act({ do: 'name parts', piece, names: ['drawer 1', 'drawer 2', 'drawer 3'] }, monday);
  const parts = work.piece.parts.map(({ id }) => id);
  parts.forEach((part, index) => {
    work.act({ do: 'next stamp', piece, part }, monday + index * 20 * minute);
    work.act({ do: 'next stamp', piece, part }, monday + (index * 20 + 10) * minute);
  });
  const windows = work.windows().filter(({ rule }) => rule.id === 'recoat');
  expect(windows.map(({ subject }) => subject.partId)).toEqual(parts);
  const open = (at: Instant) => windows.filter((window) => stateAt(window, at) === 'open').length;
  const after = (minutes: number): Instant => monday + 2 * hour + minutes * minute;
  expect([9, 10, 29, 30, 49, 50].map((minutes) => open(after(minutes)))).toEqual([
    0, 1, 1, 2, 2, 3,
  ]);
});

test('turning a door over is later than recoating it', () => {
  const work = using('waterborne-clear');
  work.press(monday);
  work.done(monday + 10 * minute);
  walk(work, 'recoat', [[130 * minute, 'open']]);
  walk(work, 'turn-over', [
    [130 * minute, 'before'],
    [370 * minute, 'open'],
  ]);
});

test('chlorine bleach works while it is wet, and longer where it is wetted again', () => {
  const work = using('chlorine-bleach');
  work.press(monday);
  walk(work, 'rinse-off', [
    [9 * minute, 'before'],
    [10 * minute, 'closing'],
    [30 * minute, 'late'],
  ]);
  work.stamp('topped-up', monday + 25 * minute);
  walk(work, 'rinse-off', [
    [50 * minute, 'closing'],
    [55 * minute, 'late'],
  ]);
});

test('an epoxy inlay is topped up while it is green; after that it is washed and sanded first', () => {
  const work = using('epoxy-inlay', [{ event: 'mixed', says: 'mixed' }, on]);
  work.press(monday);
  walk(work, 'pot', [
    [19 * minute, 'open'],
    [20 * minute, 'closing'],
    [30 * minute, 'late'],
  ]);
  work.press(monday + 10 * minute);
  work.done(monday + 20 * minute);
  walk(work, 'green', [
    [3 * hour, 'before'],
    [200 * minute, 'open'],
    [490 * minute, 'late'],
  ]);
  expect(says(work, 'green', monday + 9 * hour)).toMatch(/wash off the blush, sand 80 to 120/);
  work.stamp('topped-up', monday + 4 * hour);
  walk(work, 'green', [
    [6.9 * hour, 'before'],
    [7 * hour, 'open'],
    [12 * hour, 'late'],
  ]);
});

test('blotch control has a "stain before"', () => {
  const work = using('blotch-control');
  work.press(monday);
  walk(work, 'wipe-off', [
    [5 * minute, 'closing'],
    [15 * minute, 'late'],
  ]);
  work.done(monday + 10 * minute);
  walk(work, 'stain', [
    [39 * minute, 'before'],
    [40 * minute, 'open'],
    [2 * hour, 'late'],
  ]);
});

test('within X or after Y, and not between', () => {
  const work = using('oil-polyurethane-two-windows');
  work.press(monday);
  work.done(monday + 20 * minute);
  walk(work, 'recoat', [
    [40 * minute, 'before'],
    [55 * minute, 'open'],
    [90 * minute, 'closing'],
    [2 * hour, 'barred'],
    [72 * hour, 'barred'],
    [72 * hour + 20 * minute, 'open'],
  ]);
});

test('a cure goes in stages: rubbing out, wrapping, light use, full cure', () => {
  const work = using('oil-polyurethane');
  work.press(monday);
  work.done(monday);
  const opens = ['light-use', 'wrap', 'rub-out', 'full-cure'].map((id) => {
    const window = work.window(id);
    return (window.stretches.find(({ meaning }) => meaning === 'go')?.begins ?? 0) - monday;
  });
  expect(opens).toEqual([48 * hour, 7 * day, 21 * day, 30 * day]);
});

test('glue: in clamps before it skins over, then till the clamps may come off', () => {
  const work = using('pva-yellow', [on, { event: 'in-clamps', says: 'in clamps' }]);
  work.press(monday);
  walk(work, 'assemble', [
    [4 * minute, 'closing'],
    [5 * minute, 'late'],
  ]);
  work.press(monday + 3 * minute);
  walk(work, 'clamps-off', [
    [32 * minute, 'before'],
    [33 * minute, 'open'],
  ]);
  work.done(monday + 5 * minute);
  work.stamp('clamps-off', monday + hour);
  walk(work, 'clamps-off', [[hour, 'done']]);
});

test.each([
  'milk-paint',
  'two-part-polyurethane',
  'epoxy-coat',
  'conversion-varnish',
  'epoxy-glue',
])('%s is mixed in a pot that the next piece may take from', (id) => {
  const work = using(id, [{ event: 'mixed', says: 'mixed' }, on]);
  work.press(monday);
  const pot = work.window('pot');
  expect(stateAt(pot, monday + 20 * minute)).toMatch(/open|closing/);
  expect(stateAt(pot, monday + day)).toBe('late');
  work.press(monday + 20 * minute);
  expect(work.piece.stamps.map((stamp) => stamp.pot)).toEqual([
    work.bench.pots[0]?.id,
    work.bench.pots[0]?.id,
  ]);
});

test('milk paint stands before it is used', () => {
  const work = using('milk-paint', [{ event: 'mixed', says: 'mixed' }, on]);
  work.press(monday);
  walk(work, 'pot', [
    [14 * minute, 'before'],
    [15 * minute, 'open'],
    [4 * hour, 'late'],
  ]);
});
