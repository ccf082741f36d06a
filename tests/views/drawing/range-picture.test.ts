import fc from 'fast-check';
import { describe, expect, it, test } from 'vitest';
import {
  actualBar,
  lineWidth,
  minutesAxis,
  plain,
  rangeAxisLine,
  rangePicture,
  ratioAxis,
} from '../../../src/views/drawing/index.ts';

const minutes = minutesAxis(120);
const cells = 34;

describe('the hours of one piece', () => {
  it('stand on an axis of round minutes', () => {
    expect(plain(rangeAxisLine(minutes, cells))).toBe('0       30      60       90    120');
  });

  test.each([
    [15, 12, 20, 18, '   ├┼●┤'],
    [63, 50, 81, 64, '              ├──┼●───┤'],
    [74, 60, 94, 71, '                ├───●─────┤'],
    [21, 14, 32, 22, '    ├─●──┤'],
    [19, 15, 25, 16, '    ●┼─┤'],
    [21, 15, 30, 34, '    ├─┼─┤●'],
    [43, 38, 53, 47, '          ├─┼●─┤'],
    [11, 9, 13, 12, '  ├●┤'],
  ])('estimate %i, %i to %i, took %i', (estimate, low, high, actual, expected) => {
    expect(
      plain(rangePicture({ estimate, low, high, actual }, minutes, cells, 'blocks')).trimEnd(),
    ).toBe(expected);
  });

  it('in ASCII', () => {
    const range = { estimate: 63, low: 50, high: 81, actual: 64 };
    expect(plain(rangePicture(range, minutes, cells, 'ascii')).trimEnd()).toBe(
      '              |--+o---|',
    );
  });

  it('points past an edge that does not reach far enough', () => {
    expect(
      plain(
        rangePicture({ estimate: 100, low: 80, high: 150, actual: 160 }, minutes, cells, 'blocks'),
      ),
    ).toMatch(/├─+┼─+›$/);
    expect(
      plain(rangePicture({ estimate: 1, low: 0.3, high: 1.5 }, ratioAxis, 33, 'blocks')),
    ).toMatch(/^‹─+┼─+┤ +$/);
  });
});

describe('the hours over finished pieces', () => {
  const width = 33;

  it('stand on an axis of ratios, the same way to both sides', () => {
    expect(plain(rangeAxisLine(ratioAxis, width))).toBe('half            as said    double');
    expect(plain(rangeAxisLine(ratioAxis, 22))).toBe('half   as said  double');
    expect(plain(rangeAxisLine(ratioAxis, 10))).toBe('   as said');
    expect(plain(rangeAxisLine(ratioAxis, 5))).toBe('half ');
  });

  test.each([
    [1.0, 0.8, 1.3, '           ├────┼─────┤'],
    [1.4, 1.1, 1.8, '                  ├─────┼─────┤'],
    [1.1, 0.9, 1.4, '              ├───┼─────┤'],
    [0.9, 0.6, 1.4, '    ├─────────┼─────────┤'],
    [0.9, 0.8, 1.1, '           ├──┼───┤'],
    [1.0, 0.8, 1.2, '           ├────┼───┤'],
    [1.2, 0.7, 1.9, '        ├───────────┼──────────┤'],
  ])('%d times, %d to %d', (estimate, low, high, expected) => {
    expect(plain(rangePicture({ estimate, low, high }, ratioAxis, width, 'blocks')).trimEnd()).toBe(
      expected,
    );
  });
});

describe('axes of minutes', () => {
  test.each([
    [12, 15],
    [40, 40],
    [100, 120],
    [121, 180],
    [500, 720],
    [0, 5],
  ])('up to %i reach to %i', (longest, to) => {
    expect(minutesAxis(longest).to).toBe(to);
  });

  it('always reach far enough, with few round ticks', () => {
    fc.assert(
      fc.property(fc.integer({ min: 0, max: 20_000 }), (longest) => {
        const axis = minutesAxis(longest);
        expect(axis.to).toBeGreaterThanOrEqual(longest);
        expect(axis.ticks.length).toBeLessThanOrEqual(6);
        expect(axis.ticks.length).toBeGreaterThanOrEqual(2);
        expect(axis.ticks.every((tick) => tick.at % 5 === 0)).toBe(true);
      }),
    );
  });
});

describe('a bar of what it came to', () => {
  const axis = minutesAxis(30);

  it('has the estimate marked on it', () => {
    expect(plain(actualBar({ estimate: 15, actual: 20 }, axis, 31, 'blocks')).trimEnd()).toBe(
      `${'█'.repeat(15)}│${'█'.repeat(5)}`,
    );
    expect(plain(actualBar({ estimate: 15, actual: 10 }, axis, 31, 'ascii')).trimEnd()).toBe(
      `${'#'.repeat(11)}    |`,
    );
    expect(plain(actualBar({ estimate: 15, actual: 50 }, axis, 31, 'blocks'))).toBe(
      `${'█'.repeat(15)}│${'█'.repeat(14)}›`,
    );
  });
});

it('takes exactly its cells, whatever the numbers', () => {
  const value = fc.double({ min: 0.1, max: 400, noNaN: true });
  fc.assert(
    fc.property(
      fc.tuple(value, value, value),
      value,
      fc.integer({ min: 1, max: 70 }),
      fc.constantFrom(minutes, ratioAxis),
      (three, actual, width, axis) => {
        const [low = 0, estimate = 0, high = 0] = three.toSorted((a, b) => a - b);
        expect(
          lineWidth(rangePicture({ low, estimate, high, actual }, axis, width, 'blocks')),
        ).toBe(width);
        expect(plain(rangePicture({ low, estimate, high, actual }, axis, width, 'blocks'))).toMatch(
          /[●›‹]/,
        );
        expect(lineWidth(actualBar({ estimate, actual }, axis, width, 'blocks'))).toBe(width);
        expect(lineWidth(rangeAxisLine(axis, width))).toBe(width);
      },
    ),
  );
});
