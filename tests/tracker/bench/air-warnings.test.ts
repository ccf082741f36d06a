import { describe, expect, test } from 'vitest';
import { airWarnings, type Piece } from '../../../src/tracker/bench/index.ts';
import { hour } from '../../../src/tracker/time/index.ts';
import type { Product, Reading } from '../../../src/tracker/trade/index.ts';
import { afternoon, at, product, snapshotOf, step } from '../../views/support/bench-of.ts';

const now = at('24 14:29');
const [anyPiece] = snapshotOf(afternoon().bench()).bench.pieces.values();
const coated = { ...step('coat', 'coat', { product: 'coat' }), skipped: false, copyOf: null };

const coatWindow = {
  id: 'recoat',
  kind: 'coat',
  verb: 'next coat',
  scope: 'pass',
  begins: { events: ['first-stroke'], which: 'first' },
  stretches: [{ meaning: 'wait', loss: 'costs nothing' }],
  closedBy: { by: 'nothing' },
} as const;

const pieceWith = (more: Partial<Product> = {}, carriedInAt?: number): Piece => ({
  ...anyPiece!,
  products: { coat: product('coat', [coatWindow], { productClass: 'varnish', ...more }) },
  ...(carriedInAt === undefined ? {} : { carriedInAt }),
});

const read = (tempC: number, rh: number, more: Partial<Reading> = {}): Reading => ({
  at: at('24 13:40'),
  tempC,
  rh,
  ...more,
});
const kinds = (piece: Piece, ...readings: readonly Reading[]): readonly string[] =>
  airWarnings(piece, coated, readings, now).map((warning) => warning.is);

describe('before a coat goes on', () => {
  test.each([
    [read(20, 50), []],
    [read(9.9, 50), ['too cold']],
    [read(10, 50), []],
    [read(32.1, 50), ['too hot']],
    [read(20, 86), ['too damp', 'near the dew point']],
    // At 20 C the surface, as warm as the air, is less than 3 C over the dew point from 82.9 % on.
    [read(20, 83.5), ['near the dew point']],
    [read(20, 82), []],
    [read(20, 50, { at: at('24 10:29') }), ['old reading']],
    [read(20, 50, { at: at('24 10:30') }), []],
    [read(23, 50, { surfaceC: 14 }), ['near the dew point']],
    [read(23, 50, { surfaceC: 15.1 }), []],
    [read(20, 20, { surfaceC: 8 }), ['surface too cold']],
  ])('%# %o', (reading, expected) => {
    expect(kinds(pieceWith(), reading)).toEqual(expected);
  });

  test('with no reading, or one still to come, that is said', () => {
    expect(kinds(pieceWith())).toEqual(['no reading']);
    expect(kinds(pieceWith(), read(20, 50, { at: now + 1 }))).toEqual(['no reading']);
  });

  test('a figure stands beside each', () => {
    const [cold] = airWarnings(pieceWith(), coated, [read(8, 50)], now);
    expect(cold).toEqual({ is: 'too cold', tempC: 8, limitC: 10 });
    const [near] = airWarnings(pieceWith(), coated, [read(23, 50, { surfaceC: 14 })], now);
    expect(near).toMatchObject({ surfaceC: 14, isMeasured: true });
    expect(near?.is === 'near the dew point' && near.leastC).toBeCloseTo(15.03, 1);
  });

  test('lacquer and shellac blush from 60 % on, other coats do not', () => {
    for (const productClass of ['shellac', 'nitrocellulose lacquer']) {
      expect(kinds(pieceWith({ productClass }), read(20, 60))).toEqual(['blush']);
      expect(kinds(pieceWith({ productClass }), read(20, 59))).toEqual([]);
    }
    expect(kinds(pieceWith({ productClass: 'waterborne clear' }), read(20, 70))).toEqual([]);
  });

  test('limits of its own take the place of the usual ones', () => {
    const needsAir = { fromC: 16, toC: 38, source: 'a label' };
    expect(kinds(pieceWith({ needsAir }), read(15, 50))).toEqual(['too cold']);
    expect(kinds(pieceWith({ needsAir }), read(35, 50))).toEqual([]);
  });

  test('a chemical has none, a glue those of its label', () => {
    expect(kinds(pieceWith({ chemistry: 'reaction' }), read(2, 95))).toEqual([]);
    const glue = {
      chemistry: 'glue',
      windows: [],
      needsAir: { fromC: 13, source: 'a label' },
    } as const;
    expect(kinds(pieceWith(glue), read(12, 95))).toEqual(['too cold']);
    expect(airWarnings(pieceWith(), { ...coated, product: 'none' }, [], now)).toEqual([]);
  });
});

describe('a piece carried in from the cold', () => {
  test('is warned of for six hours', () => {
    expect(kinds(pieceWith({}, now - hour), read(20, 50))).toEqual(['carried in']);
    expect(kinds(pieceWith({}, now - 6 * hour), read(20, 50))).toEqual([]);
  });

  test('until its surface was measured since then', () => {
    const piece = pieceWith({}, at('24 13:00'));
    expect(kinds(piece, read(20, 50, { surfaceC: 18 }))).toEqual([]);
    expect(kinds(piece, read(20, 50, { surfaceC: 11 }))).toEqual(['near the dew point']);
    const before = read(20, 50, { surfaceC: 18, at: at('24 12:50') });
    expect(kinds(piece, before)).toEqual(['carried in']);
  });
});
