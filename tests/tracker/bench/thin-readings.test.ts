import fc from 'fast-check';
import { expect, test } from 'vitest';
import {
  madeNeedless,
  needlessOfOld,
  type ConditionsFact,
  type Teller,
} from '../../../src/tracker/bench/index.ts';
import { day, hour, minute, type Instant } from '../../../src/tracker/time/index.ts';
import { airSense, type Span } from '../../../src/tracker/windows/index.ts';
import { at } from '../support/instants.ts';

const reading = (
  when: Instant,
  tempC: number,
  rh = 50,
  by: Teller = 'script',
  surfaceC?: number,
): ConditionsFact => ({
  id: `r${when}`,
  group: `r${when}`,
  at: when,
  told: when,
  by,
  uptimeMs: null,
  bootId: null,
  kind: 'reading-taken',
  body: { tempC, rh, ...(surfaceC === undefined ? {} : { surfaceC }) },
});

/** As the command stores them, one after another. */
const stored = (all: readonly ConditionsFact[]): readonly ConditionsFact[] =>
  all.reduce<readonly ConditionsFact[]>((kept, next) => {
    const needless = madeNeedless(kept, next);
    return [...kept.filter(({ id }) => !needless.has(id)), next];
  }, []);

const everyMinute = (count: number, tempOf: (index: number) => number, by?: Teller) =>
  Array.from({ length: count }, (_, index) =>
    reading(at('8:00') + index * minute, tempOf(index), 50, by),
  );

test('a script that reads every minute leaves about five an hour, the newest among them', () => {
  const kept = stored(everyMinute(61, () => 20));
  expect(kept.length).toBeLessThanOrEqual(7);
  expect(kept.at(-1)?.at).toBe(at('9:00'));
  const gaps = kept.slice(1).map((fact, index) => fact.at - (kept[index]?.at ?? 0));
  expect(Math.max(...gaps)).toBeLessThan(15 * minute);
});

test('a change is kept, and what a person or a surface meter told', () => {
  const warming = everyMinute(20, (index) => 20 + index * 0.5);
  expect(stored(warming)).toHaveLength(20);
  expect(stored(everyMinute(20, () => 20, 'person'))).toHaveLength(20);
  const measured = [0, 1, 2].map((index) =>
    reading(at('8:00') + index * minute, 20, 50, 'script', 18),
  );
  expect(stored(measured)).toHaveLength(3);
});

test('the last one before a long silence is kept: from it the age counts', () => {
  const facts = [reading(at('8:00'), 20), reading(at('8:05'), 20), reading(at('14:00'), 20)];
  expect(stored(facts)).toHaveLength(3);
});

test('thinning air that wobbles by 0.4 C moves the sum of a span by less than 6 %', () => {
  const span: Span = {
    ms: 6 * hour,
    chemistry: 'oxidative',
    statedFor: { tempC: 23, rh: 50 },
    may: 'grow',
  };
  const wobble = fc.array(fc.double({ min: -0.4, max: 0.4, noNaN: true }), {
    minLength: 900,
    maxLength: 900,
  });
  fc.assert(
    fc.property(wobble, fc.integer({ min: 5, max: 22 }), (noise, base) => {
      const all = everyMinute(900, (index) => base + (noise[index] ?? 0));
      const end = (facts: readonly ConditionsFact[]): Instant =>
        airSense({
          readings: facts.map((fact) => ({ at: fact.at, ...fact.body })),
          nightLowC: null,
        }).spanEnd(span, at('8:00'));
      const whole = end(all);
      expect(Math.abs(end(stored(all)) - whole)).toBeLessThan(0.06 * (whole - at('8:00')));
    }),
    { numRuns: 30, seed: 7 },
  );
});

const quarterHourly = (from: Instant, days: number): readonly ConditionsFact[] =>
  Array.from({ length: days * 96 }, (_, index) => reading(from + index * 15 * minute, 20));

test('of long ago only what tells something is kept, without a gap of four hours', () => {
  const now = at('8:00');
  const facts = quarterHourly(now - 60 * day, 60);
  const needless = needlessOfOld(facts, now, now);
  const kept = facts.filter(({ id }) => !needless.has(id));
  expect(kept.filter((fact) => fact.at < now - 43 * day).length).toBeLessThan(200);
  expect(kept.filter((fact) => fact.at > now - 42 * day)).toHaveLength(42 * 96 - 1);
  const gaps = kept.slice(1).map((fact, index) => fact.at - (kept[index]?.at ?? 0));
  expect(Math.max(...gaps)).toBeLessThan(4 * hour);
});

test('nothing goes on which a piece of the bench may hang', () => {
  const now = at('8:00');
  const facts = quarterHourly(now - 60 * day, 60);
  expect(needlessOfOld(facts, now, now - 60 * day).size).toBe(0);
});
