import { describe, expect, test } from 'vitest';
import { decide, type Intent } from '../../../src/tracker/bench/index.ts';
import { minute } from '../../../src/tracker/time/index.ts';
import { opensAt } from '../../../src/tracker/windows/index.ts';
import { contextAt } from '../support/given-when-then.ts';
import { at } from '../support/instants.ts';
import { aerosol, bleachAndClear, stainInSections, twoCoats } from '../support/schedules.ts';
import { Workday } from '../support/workday.ts';

/** What an intent is called by, or refused with. */
function answer(shop: Workday, intent: Intent, when: number): string {
  const outcome = decide(shop.bench, intent, contextAt(when));
  return outcome.ok ? outcome.says : outcome.refusal.says;
}

describe('what is said of sections', () => {
  const sectionOn = (): { readonly day: Workday; readonly piece: string } => {
    const shop = new Workday();
    const piece = shop.adds('Oak chest', stainInSections, at('8:00'));
    return { day: shop.next(piece, at('9:00')), piece };
  };

  test('the next one put on before this one may be wiped: which was wiped, and how early', () => {
    const { day: shop, piece } = sectionOn();
    const next = { do: 'next section', piece, part: null } as const;
    expect(answer(shop, next, at('9:02'))).toBe(
      'section 1 off 3 min early, section 2 on, stain on 1 Oak chest',
    );
    // Half a minute before it may be wiped is still early, by what is begun of a minute.
    expect(answer(shop, next, at('9:04:30'))).toContain('section 1 off 1 min early');
    expect(answer(shop, next, at('9:06'))).toBe('section 2 on, stain on 1 Oak chest');
  });

  test('put on outright: not the same once more, and the next one after it is off', () => {
    const { day: shop, piece } = sectionOn();
    const on = { do: 'stamp', piece, part: null, event: 'section-on' } as const;
    expect(answer(shop, on, at('9:01'))).toBe(
      'Not stamped: the last section of stain on 1 Oak chest is on. Space: next stamp.',
    );
    shop.next(piece, at('9:06'));
    expect(answer(shop, on, at('9:07'))).toBe('section 2 on, stain on 1 Oak chest');
  });
});

describe('what is said of a pass', () => {
  const between = (): { readonly day: Workday; readonly piece: string } => {
    const shop = new Workday();
    const piece = shop.adds('Plant stand', aerosol, at('8:00'));
    return { day: shop.next(piece, at('9:00')).next(piece, at('9:04')), piece };
  };
  const deed = (shop: Workday, piece: string, when: string) => {
    const intent = { do: 'next stamp', piece, part: null } as const;
    const outcome = decide(shop.bench, intent, contextAt(at(when)));
    if (!outcome.ok) throw new Error(outcome.refusal.says);
    return outcome;
  };

  test('that goes on before the last one has flashed off: by how much it is early', () => {
    const { day: shop, piece } = between();
    expect(deed(shop, piece, '9:06').says).toContain('pass 2 of 3, first stroke on 3 min early, ');
    expect(deed(shop, piece, '9:10').says).toContain('pass 2 of 3, first stroke on, ');
  });

  test('that goes on in the forbidden gap: what comes of it, loud; not within the hour, nor after the gap', () => {
    const { day: shop, piece } = between();
    expect(deed(shop, piece, '9:59').warns).toBeUndefined();
    expect(deed(shop, piece, '10:00').warns).toMatch(/^Keep off: recoating now lifts it$/);
    expect(deed(shop, piece, '57:03').warns).toMatch(/^Keep off: recoating now lifts it$/);
    expect(deed(shop, piece, '57:04').warns).toBeUndefined();
  });
});

test('a coat that goes on before the one under it may be recoated: by how much it is early', () => {
  const shop = new Workday();
  const piece = shop.adds('Side table', twoCoats, at('8:00'));
  shop.firstStroke(piece, at('9:00')).done(piece, at('9:30'));
  const next = { do: 'next stamp', piece, part: null } as const;
  expect(answer(shop, next, at('9:35'))).toBe(
    'first stroke on 1 h 55 early, coat 2 on 1 Side table',
  );
  expect(answer(shop, next, at('11:30'))).toBe('first stroke on, coat 2 on 1 Side table');
  shop.checks(piece, 'ready', at('11:00'));
  expect(answer(shop, next, at('11:05'))).toBe('first stroke on, coat 2 on 1 Side table');
});

describe('what is said of a bleach', () => {
  const aOn = (): { readonly day: Workday; readonly piece: string } => {
    const shop = new Workday();
    const piece = shop.adds('Oak chest', bleachAndClear, at('8:00'));
    shop.does({ do: 'pick up', targets: [{ piece, part: null, step: 'bleach' }] }, at('8:10'));
    shop.next(piece, at('8:11'));
    return { day: shop, piece };
  };

  test('whose B goes on before A has worked: by how much it is early', () => {
    const { day: shop, piece } = aOn();
    const wait = shop.standing(piece, at('8:12')).window;
    const opens = wait === null ? null : opensAt(wait);
    const minutes = Math.ceil(((opens ?? 0) - at('8:12')) / 60_000);
    expect(minutes).toBeGreaterThan(0);
    expect(answer(shop, { do: 'next stamp', piece, part: null }, at('8:12'))).toBe(
      `B, first stroke on ${minutes} min early, bleach on 1 Oak chest`,
    );
  });

  test('finished without B: that it is missing', () => {
    const { day: shop, piece } = aOn();
    expect(answer(shop, { do: 'done', piece, part: null }, at('8:20'))).toBe(
      'bleach done on 1 Oak chest, without B',
    );
  });
});

describe('what is said of a step that begins before what it waits for is open', () => {
  const bleached = (): { readonly day: Workday; readonly piece: string } => {
    const shop = new Workday();
    const piece = shop.adds('Oak chest', bleachAndClear, at('8:00'));
    shop.done(piece, at('8:10')).next(piece, at('9:00')).next(piece, at('9:11'));
    shop.done(piece, at('9:20')).does({ do: 'put down' }, at('9:21'));
    return { day: shop, piece };
  };
  const rinse = (piece: string): Intent => ({
    do: 'pick up',
    targets: [{ piece, part: null }],
  });

  test('by how much it is early; once open nothing', () => {
    const { day: shop, piece } = bleached();
    const opens = opensAt(shop.window(piece, 'dry')) ?? 0;
    expect(opens).toBeGreaterThan(at('10:00'));
    expect(answer(shop, rinse(piece), opens - 27 * minute)).toBe(
      'picked up 1 Oak chest, rinse, 27 min early',
    );
    expect(answer(shop, rinse(piece), opens)).toBe('picked up 1 Oak chest, rinse');
  });

  test('also of the stroke that picks it up', () => {
    const shop = new Workday();
    const piece = shop.adds('Book rack', twoCoats, at('8:00'));
    shop
      .firstStroke(piece, at('9:00'))
      .done(piece, at('9:20'))
      .does({ do: 'put down' }, at('9:21'));
    const opens = opensAt(shop.window(piece, 'recoat')) ?? 0;
    const stroke = { do: 'next stamp', piece, part: null } as const;
    expect(answer(shop, stroke, opens - 90_001)).toBe(
      'first stroke on 2 min early, coat 2 on 1 Book rack',
    );
    expect(answer(shop, stroke, opens)).toBe('first stroke on, coat 2 on 1 Book rack');
  });

  test('nothing where it was found ready', () => {
    const { day: shop, piece } = bleached();
    shop.checks(piece, 'ready', at('12:00'), 'dry');
    expect(answer(shop, rinse(piece), at('12:01'))).toBe('picked up 1 Oak chest, rinse');
  });
});
