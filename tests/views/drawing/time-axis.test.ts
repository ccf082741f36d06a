import fc from 'fast-check';
import { describe, expect, it, test } from 'vitest';
import { plain, timeAxis } from '../../../src/views/drawing/index.ts';
import { noonAfterNight, type ShopClock } from '../../../src/views/format/index.ts';

const shop: ShopClock = { zone: 'UTC', hours: '24' };
const axis = (now: string | number, width: number, clock: ShopClock = shop): string => {
  const instant = typeof now === 'string' ? Date.parse(now) : now;
  return plain(
    timeAxis({ now: instant, farEnd: noonAfterNight(instant, clock.zone), width, shop: clock }),
  );
};

describe('labels of the axis', () => {
  test.each([
    ['2026-11-24T14:29Z', 30, '14:29   15:00     18  24  06  '],
    ['2026-12-03T16:41:20Z', 30, '16:41    17:15   18  24  06 12'],
    ['2026-11-24T14:29Z', 61, '14:29    14:45  15:00   15:15   16 18  21   24  03  06  09 12'],
    ['2026-11-24T14:29Z', 20, '14:29 15:00 18 24 12'],
    // A quarter that would run over the break is left out.
    ['2026-11-24T14:05Z', 20, '14:05        18  06 '],
    ['2026-11-24T14:29Z', 12, '14:29   18  '],
    ['2026-11-24T14:29Z', 0, ''],
  ])('at %s on %i cells', (now, width, expected) => {
    expect(axis(now, width)).toBe(expected);
  });

  it('follow a clock of 12 hours', () => {
    expect(axis('2026-11-24T14:29Z', 61, { zone: 'UTC', hours: '12' })).toMatch(
      /^2:29 {5}2:45 .* 6pm .*12am .*6am .*12pm$/,
    );
  });

  it("are the shop's own quarters where its offset has quarters", () => {
    // 14:29 in Kathmandu is 08:44 UTC.
    expect(axis('2026-11-24T08:44Z', 30, { zone: 'Asia/Kathmandu', hours: '24' })).toBe(
      '14:29   15:00     18  24  06  ',
    );
  });

  it('know no hour that the clock skips', () => {
    // New York, 2026-03-07 20:00: the far end is a noon one hour nearer.
    const text = axis('2026-03-08T01:00Z', 61, { zone: 'America/New_York', hours: '24' });
    expect(text).toContain('24');
    expect(text).not.toContain('02');
    expect(text).toMatch(/12$/);
  });

  it('never touch each other, at any minute and width', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 0, max: 2 * 1440 }),
        fc.constantFrom(12, 20, 30, 61),
        fc.constantFrom('12', '24'),
        (minute, width, hours) => {
          const text = axis(Date.parse('2026-10-24T00:00Z') + minute * 60_000, width, {
            zone: 'Europe/London',
            hours,
          });
          expect(text).toHaveLength(width);
          for (const label of text.trim().split(/ +/))
            expect(label).toMatch(
              hours === '24' ? /^(\d\d:\d\d|\d\d)$/ : /^(\d?\d:\d\d|\d?\d[ap]m)$/,
            );
        },
      ),
    );
  });
});
