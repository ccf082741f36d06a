import { describe, expect, it } from 'vitest';
import { windowsOf, type Bench } from '../../../src/tracker/bench/index.ts';
import {
  dryingBook,
  coatsKeptOut,
  dryingOfProduct,
  dryingTimesFrom,
  withCoatsOf,
  type DriedCoat,
  type DryingBook,
} from '../../../src/tracker/learning/index.ts';
import { hour, minute, type Instant } from '../../../src/tracker/time/index.ts';
import { timeFactor, type Chemistry, type Reading } from '../../../src/tracker/trade/index.ts';
import {
  airSense,
  opensAt,
  type AirSense,
  type WindowRule,
} from '../../../src/tracker/windows/index.ts';
import { morning } from '../support/instants.ts';
import { schedule, step, product } from '../support/schedules.ts';
import { labelSense } from '../support/sense.ts';
import { after, clearCoat, first, go, grows, keepOff, last, milestone } from '../support/rules.ts';
import { Workday } from '../support/workday.ts';

/** The figures of rules as a file would give them: with their chemistry, and to be learned. */
const learnable = (rules: readonly WindowRule[], chemistry: Chemistry): readonly WindowRule[] =>
  JSON.parse(JSON.stringify(rules), (key, value: unknown) =>
    key === 'plus' && isGrowing(value)
      ? { ...value, chemistry, statedFor: { tempC: 23, rh: 50 }, learnable: true }
      : value,
  ) as readonly WindowRule[];

const isGrowing = (value: unknown): value is { readonly may: 'grow' } =>
  typeof value === 'object' && value !== null && 'may' in value && value.may === 'grow';

const coat = step('coat', 'coat, brushed', {
  product: 'clear coat',
  stamps: [{ event: 'first-stroke', says: 'on' }],
});
const scuff = step('scuff', 'scuff', { needs: ['scuff'] });
const next = step('next', 'coat, brushed', { needs: ['recoat'], product: 'clear coat' });
const clear = schedule(
  'clear',
  [coat, scuff, next],
  [product('clear coat', 'waterborne', learnable(clearCoat, 'waterborne'))],
);
const other = schedule(
  'other',
  [{ ...coat, product: 'shellac' }, scuff],
  [product('shellac', 'evaporative', learnable(clearCoat, 'evaporative'))],
);

const noReading = airSense({ readings: [], nightLowC: null });

/** A shop in which coats go on and are tried. */
class Coats {
  readonly day = new Workday();
  private pieces = 0;

  /** A piece whose coat had its last stroke at that instant. */
  coated(at: Instant, given = clear): string {
    this.pieces += 1;
    const id = this.day.adds(`Piece ${this.pieces}`, given, at);
    this.day.does({ do: 'pick up', targets: [{ piece: id, part: null }] }, at);
    this.day.firstStroke(id, at).done(id, at);
    this.day.tries({ do: 'put down', piece: id }, at);
    return id;
  }

  /** Not yet and then ready, so many minutes after the last stroke. */
  tried(at: Instant, notYet: number | null, ready: number | null, given = clear): string {
    const id = this.coated(at, given);
    if (notYet !== null) this.day.checks(id, 'not yet', at + notYet * minute);
    if (ready !== null) this.day.checks(id, 'ready', at + ready * minute);
    return id;
  }

  coats(air: AirSense = noReading): readonly DriedCoat[] {
    return withCoatsOf([], this.day.bench, air);
  }

  learned(before?: DryingBook): Bench & { readonly book: DryingBook } {
    const book = dryingBook(this.coats(), before);
    return { ...this.day.bench, drying: dryingTimesFrom(() => book, true), book };
  }
}

/** From the last stroke to the opening of a milestone of that piece, in minutes. */
function opening(bench: Bench, piece: string, from: Instant, of = 'scuff'): number {
  const found = bench.pieces.get(piece);
  const windows = found === undefined ? [] : windowsOf(bench, found, labelSense);
  const window = windows.find(({ rule }) => rule.milestone === of);
  return window === undefined ? NaN : ((opensAt(window) ?? NaN) - from) / minute;
}

const label = 120;
const dayOf = (day: number): Instant => morning + day * 24 * hour;

describe('coats that were tried', () => {
  it('are an interval, one from nothing, or one without end', () => {
    const shop = new Coats();
    shop.tried(dayOf(0), 100, 130);
    shop.tried(dayOf(1), null, 140);
    shop.tried(dayOf(2), 150, null);
    const ends = shop.coats().map(({ notYet, ready }) => [notYet?.minutes, ready?.minutes]);
    expect(ends).toEqual([
      [100, 130],
      [undefined, 140],
      [150, undefined],
    ]);
  });

  it('found ready and then not yet are later than that, and not known to be ready', () => {
    const shop = new Coats();
    const doubtful = shop.coated(dayOf(0));
    shop.day.checks(doubtful, 'ready', dayOf(0) + 100 * minute, 'scuff');
    shop.day.checks(doubtful, 'not yet', dayOf(0) + 130 * minute, 'scuff');
    expect(
      shop
        .coats()
        .filter((each) => each.milestone === 'scuff')
        .map(({ notYet, ready }) => [notYet?.minutes, ready?.minutes]),
    ).toEqual([[130, undefined]]);
  });

  it('with trouble on one part teach all the same by the other', () => {
    const shop = new Coats();
    const { day } = shop;
    const piece = day.adds('Chest', clear, dayOf(0));
    day.does({ do: 'name parts', piece, names: ['case', 'drawers'] }, dayOf(0));
    const [box = '', drawers = ''] = day.piece(piece).parts.map(({ id }) => id);
    for (const part of [box, drawers])
      day.firstStroke(piece, dayOf(0), part).done(piece, dayOf(0), part);
    const tries = (part: string, finding: 'ready' | 'trouble', after: number) =>
      day.does({ do: 'check', piece, part, finding }, dayOf(0) + after * minute);
    tries(drawers, 'trouble', 125);
    tries(box, 'ready', 130);
    expect(shop.coats().map(({ ready }) => ready?.minutes)).toEqual([130]);
  });

  it('count the time that had passed in the air of that day', () => {
    const shop = new Coats();
    shop.tried(dayOf(0), null, 180);
    const read = (tempC: number): readonly Reading[] => [{ at: dayOf(0), tempC, rh: 50 }];
    const inAir = (tempC: number) =>
      shop.coats(airSense({ readings: read(tempC), nightLowC: null }))[0]?.ready;
    const factor = (tempC: number) =>
      timeFactor('waterborne', { tempC: 23, rh: 50 }, { tempC, rh: 50 });
    expect(inAir(23)).toEqual({ minutes: 180, labelMinutes: expect.closeTo(180, 6) as number });
    expect(inAir(12)?.labelMinutes).toBeCloseTo(180 / factor(12), 6);
    expect(inAir(12)?.labelMinutes).toBeLessThan(150);
    // What was warmer than the label's air counts for more, though it opens no window sooner.
    expect(inAir(30)?.labelMinutes).toBeCloseTo(180 / factor(30), 6);
    expect(inAir(30)?.labelMinutes).toBeGreaterThan(200);
  });

  it('are left out where they were heavy, troubled, explained, or of a piece that is', () => {
    const shop = new Coats();
    const weight = (weight: 'heavy' | 'thin' | 'normal', piece: string, at: Instant) =>
      shop.day.does({ do: 'tell coat weight', piece, part: null, weight }, at);
    weight('heavy', shop.tried(dayOf(0), null, 130), dayOf(0) + 3 * hour);
    weight('thin', shop.tried(dayOf(1), null, 130), dayOf(1) + 3 * hour);
    const troubled = shop.tried(dayOf(2), 100, null);
    shop.day.checks(troubled, 'trouble', dayOf(2) + 2 * hour);
    const oily = shop.tried(dayOf(3), 500, null);
    shop.day.does({ do: 'explain lateness', piece: oily, cause: 'oily wood' }, dayOf(3) + 9 * hour);
    const away = shop.tried(dayOf(4), null, 130);
    const leave = { do: 'leave out of learning', piece: away, session: null, leave: true } as const;
    shop.day.does(leave, dayOf(4) + 3 * hour);
    shop.day.does(
      { do: 'remove piece', piece: shop.tried(dayOf(5), null, 130) },
      dayOf(5) + 9 * hour,
    );
    expect(shop.coats()).toEqual([]);
    weight('normal', shop.tried(dayOf(6), null, 130), dayOf(6) + 3 * hour);
    expect(shop.coats()).toHaveLength(1);
  });

  it('count from where a last stroke was moved to, and no more once their check is taken back', () => {
    const shop = new Coats();
    const id = shop.coated(dayOf(0));
    shop.day.checks(id, 'ready', dayOf(0) + 2 * hour);
    expect(shop.coats()).toHaveLength(1);
    shop.day.does({ do: 'take back' }, dayOf(0) + 3 * hour);
    expect(shop.coats()).toEqual([]);
  });

  it('of the history stand beside those of the bench, and a piece that is back speaks for itself', () => {
    const shop = new Coats();
    shop.tried(dayOf(0), null, 100);
    const past = shop.coats().map((each) => ({ ...each, piece: 'long gone' }));
    expect(withCoatsOf(past, shop.day.bench, noReading)).toHaveLength(2);
    expect(withCoatsOf(shop.coats(), shop.day.bench, noReading)).toHaveLength(1);
    // One that was left out since its year was written teaches nothing of it either.
    const out = shop.coats().map(({ piece }) => piece);
    expect(withCoatsOf([], shop.day.bench, noReading, out)).toEqual([]);
  });

  it('are the latest twenty of a product and milestone', () => {
    const shop = new Coats();
    for (let day = 0; day < 23; day++) shop.tried(dayOf(day), null, 100);
    expect(shop.coats().map(({ at }) => at)).toEqual(
      Array.from({ length: 20 }, (_, i) => dayOf(i + 3)),
    );
  });
});

describe('what is known of a product', () => {
  it('is the same whatever was asked before: of another label, or with the air left out', () => {
    const shop = new Coats();
    for (let day = 0; day < 3; day++) shop.tried(dayOf(day), 125, 165);
    const cold = { at: dayOf(0), tempC: 16, rh: 50 };
    const book = dryingBook(shop.coats(airSense({ readings: [cold], nightLowC: null })));
    const varnish = clear.products['clear coat'];
    if (varnish === undefined) throw new Error('no product');
    const known = [90, 120].flatMap((minutes) =>
      [true, false].map((inAir) => {
        const [rule] = learnable(
          [milestone('scuff', minutes * minute, { adds: 30 * minute, touch: true })],
          'waterborne',
        );
        if (rule === undefined) throw new Error('no rule');
        const own = dryingTimesFrom(() => book, inAir).own(varnish, rule);
        const fresh = structuredClone(book);
        expect(own).toEqual(dryingTimesFrom(() => fresh, inAir).own(varnish, rule));
        return own?.ms;
      }),
    );
    expect(new Set(known).size).toBe(4);
  });

  it('tells of the coats that were left out of that product alone', () => {
    const shop = new Coats();
    for (const given of [clear, other]) {
      const id = shop.tried(dayOf(0), 100, null, given);
      shop.day.checks(id, 'trouble', dayOf(0) + 2 * hour);
    }
    const keptOut = coatsKeptOut(shop.day.bench);
    expect(keptOut).toHaveLength(2);
    const varnish = clear.products['clear coat'];
    if (varnish === undefined) throw new Error('no product');
    const told = dryingOfProduct(varnish, new Map(), true, keptOut);
    expect(told.flatMap((each) => each.keptOut.map(({ product }) => product))).toEqual([
      'clear coat, waterborne',
    ]);
  });
});

describe('windows', () => {
  it('open later once three coats were slow, and only those of that product', () => {
    const shop = new Coats();
    for (const day of [0, 1]) shop.tried(dayOf(day), 125, 165);
    const here = shop.coated(dayOf(8));
    const shellac = shop.coated(dayOf(8), other);
    expect(opening(shop.learned(), here, dayOf(8))).toBe(label);
    shop.tried(dayOf(2), 125, 165);
    const learned = shop.learned();
    expect(opening(learned, here, dayOf(8))).toBeGreaterThan(150);
    expect(opening(learned, here, dayOf(8))).toBeLessThan(220);
    expect(opening(learned, shellac, dayOf(8))).toBe(label);
    expect(opening(shop.day.bench, here, dayOf(8))).toBe(label);
  });

  it('open sooner after five that were ready sooner', () => {
    const shop = new Coats();
    const here = shop.coated(dayOf(8));
    for (let day = 0; day < 5; day++) {
      expect(opening(shop.learned(), here, dayOf(8))).toBe(label);
      shop.tried(dayOf(day), 70, 80);
    }
    const sooner = opening(shop.learned(), here, dayOf(8));
    expect(sooner).toBeGreaterThan(75);
    expect(sooner).toBeLessThan(110);
  });

  it('of other products keep their objects when something is learned', () => {
    const shop = new Coats();
    const here = shop.coated(dayOf(8));
    const shellac = shop.coated(dayOf(8), other);
    const before = shop.learned();
    const windows = (bench: Bench, id: string) => {
      const piece = bench.pieces.get(id);
      return piece === undefined ? [] : windowsOf(bench, piece, labelSense);
    };
    const [clearBefore, shellacBefore] = [windows(before, here), windows(before, shellac)];
    const coats = withCoatsOf(
      Array.from({ length: 3 }, (_, i) => ({
        piece: `past ${i}`,
        product: 'clear coat, waterborne',
        productName: 'clear coat',
        milestone: 'scuff' as const,
        at: dayOf(i),
        notYet: { minutes: 150, labelMinutes: 150 },
        ready: { minutes: 170, labelMinutes: 170 },
      })),
      before,
      noReading,
    );
    const book = dryingBook(coats, before.book);
    const after: Bench = { ...before, drying: dryingTimesFrom(() => book, true) };
    expect(windows(after, shellac)).toBe(shellacBefore);
    expect(windows(after, here)).not.toBe(clearBefore);
    expect(opening(after, here, dayOf(8))).toBeGreaterThan(label);
  });

  it('before a gap in which nothing may go on are never moved', () => {
    const gap = (hours: number) => ({ ...grows(hours * hour), may: 'shrink' as const });
    const opens = milestone('recoat', 2 * hour, { adds: 30 * minute, touch: true });
    const spray = schedule(
      'spray',
      [
        { ...coat, product: 'enamel' },
        { ...next, product: 'enamel' },
      ],
      [
        product(
          'enamel',
          'evaporative',
          learnable(
            [
              {
                ...opens,
                stretches: [
                  ...opens.stretches,
                  keepOff(after(first('first-stroke'), gap(4))),
                  go(after(last('last-stroke'), grows(48 * hour))),
                ],
              },
            ],
            'evaporative',
          ),
        ),
      ],
    );
    const shop = new Coats();
    for (const day of [0, 1, 2]) shop.tried(dayOf(day), 125, 165, spray);
    const here = shop.coated(dayOf(8), spray);
    expect(opening(shop.learned(), here, dayOf(8), 'recoat')).toBe(label);
  });

  it('of what cures are never moved', () => {
    const cures = schedule(
      'cures',
      [coat, step('wrap it', 'refit, wrap', { needs: ['wrap'] })],
      [product('clear coat', 'waterborne', [milestone('wrap', 2 * hour)])],
    );
    const shop = new Coats();
    const id = shop.coated(dayOf(0), cures);
    expect(
      shop.day.tries({ do: 'check', piece: id, part: null, finding: 'ready' }, dayOf(0) + hour),
    ).toMatch(/nothing to try/);
    expect(shop.coats()).toEqual([]);
  });
});
