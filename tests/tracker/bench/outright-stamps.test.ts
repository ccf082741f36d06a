import { expect, test } from 'vitest';
import { offeredStamps } from '../../../src/tracker/bench/index.ts';
import { hour, minute, type Instant } from '../../../src/tracker/time/index.ts';
import type { PlannedStamp } from '../../../src/tracker/trade/index.ts';
import { opensAt } from '../../../src/tracker/windows/index.ts';
import { atTheLabel, monday, oneStep, Work } from '../../outside/work.ts';
import { shippedProduct } from '../../support/shipped.ts';

const on: PlannedStamp = { event: 'first-stroke', says: 'first stroke on' };

const offered = (work: Work, now: Instant): readonly string[] =>
  offeredStamps(work.bench, work.piece, null, { now, sense: atTheLabel }).map(
    ({ event, after }) => `${event}: ${after.rule.id}`,
  );

test('a stripper that is on can be topped up and covered; covered, it can be uncovered', () => {
  const work = new Work(oneStep(shippedProduct('solvent-stripper')));
  expect(offered(work, monday)).toEqual([]);
  work.press(monday);
  expect(offered(work, monday + 10 * minute)).toEqual([
    'topped-up: scrape',
    'covered: scrape',
    'last-stroke: scrape',
  ]);
  work.stamp('covered', monday + 20 * minute);
  expect(offered(work, monday + hour)).toContain('uncovered: scrape');
  expect(offered(work, monday + hour)).not.toContain('covered: scrape');
});

test('a coat that is on can be turned, which ends the wait for it', () => {
  const work = new Work(oneStep(shippedProduct('waterborne-clear')));
  work.press(monday);
  expect(offered(work, monday + 5 * minute)).toContain('last-stroke: dust-free');
  work.done(monday + 10 * minute);
  expect(offered(work, monday + hour)).toEqual(['turned: turn-over']);
  work.stamp('turned', monday + 7 * hour);
  expect(work.window('turn-over').closedAt).toBe(monday + 7 * hour);
  expect(offered(work, monday + 8 * hour)).toEqual([]);
});

test('clamps come off; a stamp goes to the step whose window it ends, whatever was begun after it', () => {
  const plan = oneStep(shippedProduct('pva-yellow'), [
    on,
    { event: 'in-clamps', says: 'in clamps' },
  ]);
  const [it, then] = plan.steps;
  const work = new Work({ ...plan, steps: [it!, { ...then!, needs: [], stamps: [on] }] });
  work.press(monday);
  work.press(monday + 3 * minute);
  work.done(monday + 5 * minute);
  work.press(monday + 10 * minute);
  expect(offered(work, monday + 20 * minute)).toEqual(['clamps-off: clamps-off']);
  work.stamp('clamps-off', monday + hour);
  expect(work.piece.stamps.at(-1)).toMatchObject({ event: 'clamps-off', step: it!.id });
  expect(opensAt(work.window('clamps-off'))).toBe(monday + 33 * minute);
  expect(work.window('clamps-off').closedAt).toBe(monday + hour);
});

test('what took from a pot can wash it out', () => {
  const work = new Work(
    oneStep(shippedProduct('epoxy-coat'), [{ event: 'mixed', says: 'mixed' }, on]),
  );
  work.press(monday);
  work.press(monday + 5 * minute);
  expect(offered(work, monday + 10 * minute)).toContain('washed-out: pot');
  work.stamp('washed-out', monday + 15 * minute);
  expect(work.bench.pots[0]?.washedAt).toBe(monday + 15 * minute);
  expect(offered(work, monday + 20 * minute)).not.toContain('washed-out: pot');
});

test('what would move an edge by less than a minute is not offered: it would read as if nothing moved', () => {
  const work = new Work(oneStep(shippedProduct('solvent-stripper')));
  work.press(monday);
  expect(offered(work, monday + 40_000)).not.toContain('topped-up: scrape');
  expect(offered(work, monday + minute)).toContain('topped-up: scrape');
  // Told all the same it goes where it belongs.
  work.stamp('topped-up', monday + 50_000);
  expect(work.piece.stamps.at(-1)).toMatchObject({ event: 'topped-up', at: monday + 50_000 });
});
