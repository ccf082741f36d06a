import { describe, expect, test } from 'vitest';
import {
  benchDays,
  pieceOutlook,
  scheduleDays,
  type BenchDays,
} from '../../../src/tracker/estimate/index.ts';
import { hour, minute } from '../../../src/tracker/time/index.ts';
import { nothingKnown, type Product, type Step } from '../../../src/tracker/trade/index.ts';
import type { WindowRule } from '../../../src/tracker/windows/index.ts';
import { after, first, go, grows, milestone, wait } from '../support/rules.ts';
import { product, schedule, step } from '../support/schedules.ts';
import { inventShop, monday } from './invented-shop.ts';

/** Minutes and windows are invented; what they come to is worked by hand, from the first opening of the shop. */

const takes = (id: string, typical: number, more: Partial<Step> = {}): Step =>
  step(id, 'other', {
    driver: 'fixed',
    minutes: { typical, low: typical, high: typical },
    ...more,
  });
const coat = { product: 'clear', stamps: [{ event: 'first-stroke', says: 'on' }] } as const;

function days(hoursOpen: number, steps: readonly Step[], products: readonly Product[] = []) {
  const { leastMs, mostMs }: BenchDays = benchDays(schedule('any', steps, products), nothingKnown, {
    open: hoursOpen * hour,
    now: monday,
    minutesOf: ({ minutes }) => minutes.typical,
  });
  return [leastMs / minute, mostMs / minute];
}
/** Alike in every branch. */
const done = (...given: Parameters<typeof days>): number => {
  const [least, most] = days(...given);
  expect(least).toBe(most);
  return least ?? NaN;
};
const nextDay = 24 * 60;

describe('when work is done in a shop that is open for an hour a day', () => {
  const clear = product('clear', 'waterborne', []);

  test('what can rest goes on the next day, and ends as the shop shuts where it fills that too', () => {
    expect(done(1, [takes('sand', 90)])).toBe(nextDay + 30);
    expect(done(1, [takes('sand', 120)])).toBe(nextDay + 60);
  });

  test('what is put on is not begun where it does not fit, with stamps or without', () => {
    const sanded = takes('sand', 40);
    expect(done(1, [sanded, takes('coat', 30, coat)], [clear])).toBe(nextDay + 30);
    expect(done(1, [sanded, takes('wax', 30, { product: 'clear' })], [clear])).toBe(nextDay + 30);
  });

  test('what no day is long enough for is begun all the same', () => {
    expect(done(1, [takes('sand', 10), takes('coat', 90, coat)], [clear])).toBe(10 + 90);
  });
});

describe('what a step waits for', () => {
  const fromFirstStroke: WindowRule = {
    ...milestone('recoat', 0),
    stretches: [wait, go(after(first('first-stroke'), grows(30 * minute)))],
  };

  test('counts from the strokes of the last pass alone', () => {
    const twice = takes('coat', 20, { ...coat, passes: 2 });
    const next = takes('next', 5, { needs: ['recoat'] });
    // The second pass from minute 10, so the next step from 40.
    expect(done(10, [twice, next], [product('clear', 'waterborne', [fromFirstStroke])])).toBe(45);
  });

  test('may have been started by a step before the last', () => {
    const products = [
      product('clear', 'waterborne', [milestone('light use', 2 * hour)]),
      product('wax', 'waterborne', [milestone('dust-free', 10 * minute)]),
    ];
    const steps = [
      takes('coat', 10, coat),
      takes('wax', 10, { ...coat, product: 'wax' }),
      takes('polish', 5, { needs: ['dust-free'] }),
      takes('load', 5, { needs: ['light use'] }),
    ];
    expect(done(10, steps, products)).toBe(10 + 120 + 5);
  });

  test('is as long as the wood makes it, where either is tried', () => {
    const opens = (minutes: number) => [milestone('dry', minutes * minute)];
    const bleach = product('clear', 'reaction', [], {
      byWood: { soft: opens(60), hard: opens(90) },
    });
    const steps = [
      takes('bleach', 10, coat),
      takes('rinse', 5, { needs: ['dry'] }),
      takes('knots', 5, { onlyIf: { wood: ['soft'] } }),
    ];
    expect(days(10, steps, [bleach])).toEqual([10 + 60 + 5 + 5, 10 + 90 + 5]);
  });
});

describe('what answers make of minutes', () => {
  const asking = takes('look', 10, {
    asks: {
      question: 'What is on it?',
      answers: [
        { id: 'shellac', says: 'shellac' },
        { id: 'urethane', says: 'urethane' },
      ],
    },
  });
  const strip = takes('strip', 60, { minutesTimes: { look: { urethane: 3 } } });
  const plan = schedule('any', [asking, strip]);
  const around = { open: 10 * hour, now: monday };

  test('makes the days of its branch longer', () => {
    const { leastMs, mostMs } = scheduleDays({}, plan, around);
    expect([leastMs / minute, mostMs / minute]).toEqual([10 + 60, 10 + 180]);
  });

  test('counts for a piece too, with the steps that somebody kept or took out whatever its rule says', () => {
    const kept = takes('prime', 20, { onlyIf: { madeSince: 2000 } });
    const shop = inventShop();
    const id = shop.add('Desk', schedule('any', [asking, strip, kept]));
    const minutes = () => {
      const told = pieceOutlook(shop.bench(), shop.piece(id), around)?.days;
      return [(told?.leastMs ?? NaN) / minute, (told?.mostMs ?? NaN) / minute];
    };
    const skip = (step: string, skipped: boolean) =>
      shop.act({ do: 'skip step', piece: id, step, skipped }, monday);
    expect(minutes()).toEqual([70, 210]);
    skip('prime', false);
    expect(minutes()).toEqual([90, 210]);
    skip('strip', true);
    expect(minutes()).toEqual([30, 30]);
  });
});
