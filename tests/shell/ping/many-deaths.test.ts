import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { minute, second, type Milliseconds } from '../../../src/tracker/time/index.ts';
import { smallSchedule } from '../support/small-schedule.ts';
import {
  processNames,
  severalProcesses,
  type Death,
  type ProcessName,
} from '../support/processes.ts';

type Happening =
  | { readonly is: 'start' | 'stop' | 'go on'; readonly who: ProcessName }
  | { readonly is: 'die'; readonly who: ProcessName; readonly when: Death }
  | { readonly is: 'timer'; readonly ms: Milliseconds }
  | { readonly is: 'stroke' | 'hold' }
  | { readonly is: 'sleep' | 'clock set'; readonly ms: Milliseconds };

type Schedule = readonly (readonly [afterSeconds: number, Happening])[];

const who = fc.constantFrom(...processNames);
const start = fc.record({ is: fc.constant('start' as const), who });
const timer = fc.record({
  is: fc.constant('timer' as const),
  ms: fc.integer({ min: 5, max: 300 }).map((seconds) => seconds * second),
});
const stroke = fc.constant({ is: 'stroke' as const });
const hold = fc.constant({ is: 'hold' as const });
const calmOnes: fc.Arbitrary<Happening> = fc.oneof(start, timer, stroke, hold);
const deaths: fc.Arbitrary<Happening> = fc.record({
  is: fc.constant('die' as const),
  who,
  when: fc.constantFrom('at rest', 'claimed', 'sent'),
});
const standstills: fc.Arbitrary<Happening> = fc.oneof(
  fc.record({ is: fc.constantFrom('stop' as const, 'go on' as const), who }),
  fc.record({
    is: fc.constant('sleep' as const),
    ms: fc.integer({ min: 1, max: 1800 }).map((seconds) => seconds * second),
  }),
  fc.record({
    is: fc.constant('clock set' as const),
    ms: fc.integer({ min: -7200, max: 7200 }).map((seconds) => seconds * second),
  }),
);
const scheduleOf = (...happenings: readonly fc.Arbitrary<Happening>[]): fc.Arbitrary<Schedule> =>
  fc.array(fc.tuple(fc.integer({ min: 0, max: 90 }), fc.oneof(...happenings)), {
    minLength: 3,
    maxLength: 14,
  });

/** Every ping of a stool's dwell and of timers, while processes come and go as the schedule says. */
async function happens(schedule: Schedule, first: ProcessName) {
  const shop = severalProcesses();
  shop.act({ do: 'add piece', name: 'Stool', schedule: smallSchedule });
  const [piece = ''] = shop.pieceIds();
  shop.act({ do: 'done', piece, part: null });
  shop.act({ do: 'first stroke', piece, part: null });
  shop.act({ do: 'add piece', name: 'Box', schedule: smallSchedule });
  const box = shop.pieceIds().find((id) => id !== piece) ?? '';
  await shop.start(first);
  /** How long the last due ping of a window has been waiting while somebody was there that could send it. */
  const waited = new Map<string, Milliseconds>();
  let longest: Milliseconds = 0;
  const pass = async (seconds: number): Promise<void> => {
    for (let each = 0; each < seconds; each++) {
      await shop.second();
      if (!shop.able()) continue;
      const heard = new Set(shop.told.flatMap(({ keys }) => keys));
      for (const key of shop.lastDue()) {
        if (heard.has(key)) continue;
        waited.set(key, (waited.get(key) ?? 0) + second);
        longest = Math.max(longest, waited.get(key) ?? 0);
      }
    }
  };
  for (const [after, happening] of schedule) {
    await pass(after);
    switch (happening.is) {
      case 'start':
        await shop.start(happening.who);
        break;
      case 'stop':
        shop.stop(happening.who);
        break;
      case 'go on':
        shop.goOn(happening.who);
        break;
      case 'die':
        shop.die(happening.who, happening.when);
        break;
      case 'timer':
        shop.act({ do: 'start timer', piece: null, label: 'clamps', ms: happening.ms });
        break;
      case 'stroke':
        shop.act({ do: 'first stroke', piece, part: null });
        break;
      case 'hold':
        // Its day is today, so the question is due at once.
        shop.act({ do: 'place hold', piece: box, reason: 'hardware', askAgain: '2026-11-24' });
        break;
      case 'sleep':
        shop.clock.pass(happening.ms);
        break;
      case 'clock set':
        shop.clock.set(happening.ms);
        break;
    }
  }
  // Whoever is still there, stopped or not, there is a screen in the end.
  for (const each of processNames) shop.goOn(each);
  shop.letLive();
  await shop.start('screen A');
  shop.die('screen B', 'at rest');
  await pass(150);
  const heard = new Set(shop.told.flatMap(({ keys }) => keys));
  const never = shop.lastDue().filter((key) => !heard.has(key));
  /** Told again although it was on record that it had gone out, or without saying so. */
  const doubled = shop.told.filter((one, index) => {
    const before = shop.told
      .slice(0, index)
      .filter(({ keys }) => keys.some((key) => one.keys.includes(key)));
    return before.length > 0 && (!one.saysAgain || before.some(({ recorded }) => recorded));
  });
  return { never, doubled, longest, told: shop.told };
}

const few = { numRuns: Number(process.env['RECOAT_RUNS'] ?? 60) };

describe('whatever happens to two screens and a keeper', { timeout: 600_000 }, () => {
  it('while nothing happens to them tells every ping once, within the second', async () => {
    await fc.assert(
      fc.asyncProperty(scheduleOf(calmOnes), who, async (schedule, first) => {
        const { never, doubled, longest } = await happens(schedule, first);
        expect({ never, doubled }).toEqual({ never: [], doubled: [] });
        expect(longest).toBeLessThanOrEqual(2 * second);
      }),
      few,
    );
  });

  it('tells every ping through deaths at any point, again only where its sender died, and says so', async () => {
    await fc.assert(
      fc.asyncProperty(scheduleOf(calmOnes, deaths), who, async (schedule, first) => {
        const { never, doubled, longest } = await happens(schedule, first);
        expect({ never, doubled }).toEqual({ never: [], doubled: [] });
        // A claim without a sender is given half a minute, and may be lost once more.
        expect(longest).toBeLessThanOrEqual(2 * minute);
      }),
      few,
    );
  });

  it('tells every ping through deaths, stops, sleep and clocks that are set', async () => {
    await fc.assert(
      fc.asyncProperty(scheduleOf(calmOnes, deaths, standstills), who, async (schedule, first) => {
        const { never, doubled, longest } = await happens(schedule, first);
        expect({ never, doubled }).toEqual({ never: [], doubled: [] });
        expect(longest).toBeLessThanOrEqual(4 * minute);
      }),
      few,
    );
  });
});
