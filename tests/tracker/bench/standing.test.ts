import { describe, expect, test } from 'vitest';
import { ranks } from '../../../src/tracker/bench/index.ts';
import { hour } from '../../../src/tracker/time/index.ts';
import { at } from '../support/instants.ts';
import {
  aerosol,
  bleachAndClear,
  glueUp,
  oilUntilRight,
  product,
  schedule,
  step,
  strip,
  twoCoats,
} from '../support/schedules.ts';
import { milestone } from '../support/rules.ts';
import { Workday } from '../support/workday.ts';

const rankOf = (day: Workday, piece: string, clock: string) => day.standing(piece, at(clock)).rank;

describe('how one piece stands', () => {
  test('newly added it waits for hands', () => {
    const day = new Workday();
    const piece = day.adds('Side table', twoCoats, at('8:00'));
    expect(day.standing(piece, at('8:30'))).toMatchObject({
      rank: 'waits',
      window: null,
      step: { id: 'coat 1' },
      orderAt: at('8:00'),
    });
  });

  test('a coat: drying asks for nothing, open costs work when it closes, closed costs nothing more', () => {
    const day = new Workday();
    const piece = day.adds('Side table', twoCoats, at('8:00'));
    day.firstStroke(piece, at('9:00')).done(piece, at('9:30')).does({ do: 'put down' }, at('9:35'));
    expect(day.standing(piece, at('10:00'))).toMatchObject({
      rank: 'costs nothing',
      orderAt: at('11:30'),
    });
    expect(day.standing(piece, at('12:00'))).toMatchObject({
      rank: 'costs work',
      orderAt: at('33:00'),
    });
    expect(rankOf(day, piece, '34:00')).toBe('costs nothing');
  });

  test('what spoils stands first though it is in hand', () => {
    const day = new Workday();
    const piece = day.adds('Ash door', strip, at('8:00'));
    day.next(piece, at('9:00'));
    expect(day.standing(piece, at('9:01'))).toMatchObject({ rank: 'spoils', orderAt: at('9:30') });
    expect(day.standing(piece, at('9:01')).session).not.toBeNull();
    // Lost already: since when.
    expect(day.standing(piece, at('9:40'))).toMatchObject({ rank: 'spoils', orderAt: at('9:30') });
  });

  test('what the first undone step waits for decides, not the whole list of milestones', () => {
    const day = new Workday();
    const piece = day.adds('Side table', twoCoats, at('8:00'));
    day.firstStroke(piece, at('9:00')).done(piece, at('9:30')).does({ do: 'put down' }, at('9:35'));
    expect(day.standing(piece, at('10:00')).windows.map(({ rule }) => rule.id)).toEqual(['recoat']);
  });

  test('a step does not wait for itself', () => {
    const day = new Workday();
    const oil = { ...oilUntilRight, steps: oilUntilRight.steps.slice(0, 1) };
    const piece = day.adds('Ash box', oil, at('8:00'));
    day.firstStroke(piece, at('9:00'));
    expect(day.windows(piece, 'recoat')).toHaveLength(1);
    expect(day.standing(piece, at('9:10')).windows).toEqual([]);
  });

  test('a coat that is still to go on is waited for, not the one under it', () => {
    const day = new Workday();
    const turned = schedule(
      'turned',
      [
        step('underside', 'coat, brushed', { product: 'paint' }),
        step('top side', 'coat, brushed', { product: 'paint', needs: ['turn over'] }),
        step('scuff', 'scuff', { needs: ['scuff'] }),
      ],
      [
        product('paint', 'oxidative', [
          milestone('scuff', 16 * hour),
          {
            ...milestone('turn over', 48 * hour),
            closedBy: { by: 'stamp', stamp: { events: ['turned'], which: 'last' } },
          },
        ]),
      ],
    );
    const piece = day.adds('Table top', turned, at('8:00'));
    day.does({ do: 'pick up', targets: [{ piece, part: null, step: 'underside' }] }, at('8:00'));
    day.done(piece, at('8:30')).does({ do: 'put down' }, at('8:35'));
    const waitsFor = (clock: string) =>
      day.standing(piece, at(clock)).windows.map(({ rule }) => rule.milestone);
    expect(waitsFor('58:00')).toEqual(['turn over']);
    day.does({ do: 'stamp', piece, part: null, step: 'underside', event: 'turned' }, at('58:00'));
    expect(waitsFor('58:01')).toEqual([]);
    expect(day.standing(piece, at('58:01')).rank).toBe('waits');
  });

  test('asked about an earlier instant, what was still to be done then counts', () => {
    const day = new Workday();
    const piece = day.adds('Side table', twoCoats, at('8:00'));
    day.firstStroke(piece, at('9:00')).done(piece, at('9:30')).firstStroke(piece, at('12:00'));
    const waitedFor = (clock: string) =>
      day.standing(piece, at(clock)).windows.map(({ rule }) => rule.id);
    expect([waitedFor('11:50'), waitedFor('12:10')]).toEqual([['recoat'], ['scuff']]);
  });

  test('a later step that waits does not hold up what is next', () => {
    const day = new Workday();
    const piece = day.adds('Side table', twoCoats, at('8:00'));
    day.firstStroke(piece, at('9:00')).done(piece, at('9:30')).does({ do: 'put down' }, at('9:35'));
    const look = {
      name: 'look over',
      stepClass: 'look over' as const,
      minutes: { typical: 5, low: 3, high: 9 },
      driver: 'fixed' as const,
      setupMinutes: 0,
      stamps: [],
      windows: [],
      needs: [],
      cautions: [],
    };
    day.does({ do: 'insert step', piece, step: look, before: 'coat 2' }, at('9:40'));
    expect(rankOf(day, piece, '10:00')).toBe('waits');
    // But once the coat can be lost, it shows.
    expect(rankOf(day, piece, '12:00')).toBe('costs work');
  });

  test('a hold goes to the foot, unless a window asks for hands', () => {
    const day = new Workday();
    const piece = day.adds('Side table', twoCoats, at('8:00'));
    day.does({ do: 'place hold', piece, reason: 'hinge', askAgain: null }, at('8:30'));
    expect(day.standing(piece, at('8:31'))).toMatchObject({ rank: 'hold', orderAt: at('8:30') });
    day.firstStroke(piece, at('9:00')).done(piece, at('9:30')).does({ do: 'put down' }, at('9:35'));
    expect(rankOf(day, piece, '12:00')).toBe('costs work');
  });

  test('with every step done and nothing curing it is finished', () => {
    const day = new Workday();
    const piece = day.adds('Ash door', strip, at('8:00'));
    day.done(piece, at('9:00')).done(piece, at('10:00'));
    expect(day.standing(piece, at('10:01'))).toMatchObject({ rank: 'finished', step: null });
  });

  test('a piece that cures is at the foot until it has', () => {
    const day = new Workday();
    const piece = day.adds('Ash box', oilUntilRight, at('8:00'));
    day
      .firstStroke(piece, at('9:00'))
      .done(piece, at('9:30'))
      .done(piece, at('22:00'))
      .does({ do: 'put down' }, at('22:01'));
    expect(rankOf(day, piece, '22:02')).toBe('curing');
    expect(rankOf(day, piece, '400:00')).toBe('costs nothing');
  });

  test('a piece that cures for a later step than its next one waits for hands', () => {
    const day = new Workday();
    const glued = schedule(
      'glued',
      [
        step('oil', 'coat, wiped', {
          product: 'oil',
          stamps: [{ event: 'first-stroke', says: 'first stroke on' }],
        }),
        step('touch up', 'touch-up'),
        step('wrap', 'refit, wrap', { needs: ['full cure'] }),
      ],
      [product('oil', 'oxidative', [milestone('full cure', 48 * hour)])],
    );
    const piece = day.adds('Ash box', glued, at('8:00'));
    day.firstStroke(piece, at('8:50')).done(piece, at('9:00')).does({ do: 'put down' }, at('9:01'));
    expect(day.standing(piece, at('9:02'))).toMatchObject({ rank: 'waits' });
    day.done(piece, at('10:00'));
    expect(rankOf(day, piece, '10:02')).toBe('curing');
  });
});

describe('the order of the bench', () => {
  test('is by what would be lost, then by the clock, then by number', () => {
    const day = new Workday({ hands: 9 });
    const add = (name: string, plan: typeof twoCoats) => day.adds(name, plan, at('8:00'));
    const waiting = add('waiting', twoCoats);
    const held = add('held', twoCoats);
    day.does({ do: 'place hold', piece: held, reason: 'hinge', askAgain: null }, at('8:10'));
    const curing = add('curing', oilUntilRight);
    day.firstStroke(curing, at('8:20')).done(curing, at('8:21')).done(curing, at('21:00'));
    const drying = add('drying', twoCoats);
    day.firstStroke(drying, at('21:10')).done(drying, at('21:20'));
    const open = add('open', twoCoats);
    day.firstStroke(open, at('8:30')).done(open, at('8:40'));
    const barred = add('barred', aerosol);
    day.firstStroke(barred, at('18:00')).done(barred, at('18:10'));
    for (const piece of [curing, drying, open, barred])
      day.does({ do: 'put down', piece }, at('21:30'));
    const inHand = add('in hand', twoCoats);
    day.does({ do: 'pick up', targets: [{ piece: inHand, part: null }] }, at('21:31'));
    const wet = add('wet', bleachAndClear);
    day.done(wet, at('21:32')).next(wet, at('21:40'));
    const wetter = add('wetter', glueUp);
    day.next(wetter, at('21:41'));

    const rows = day.standings(at('21:42'));
    expect(rows.map(({ piece, rank }) => `${piece?.name}: ${rank}`)).toEqual([
      'wetter: spoils',
      'wet: spoils',
      'in hand: in hand',
      'open: costs work',
      'drying: costs nothing',
      'barred: keep off',
      'waiting: waits',
      'held: hold',
      'curing: curing',
    ]);
    const places = rows.map(({ rank }) => ranks.indexOf(rank));
    expect(places).toEqual([...places].sort((a, b) => a - b));
    expect(day.piece(waiting).number).toBe(1);
  });

  test('of equals is by number', () => {
    const day = new Workday();
    const names = ['a', 'b', 'c', 'd'].map((name) => day.adds(name, twoCoats, at('8:00')));
    expect(day.standings(at('9:00')).map(({ key }) => key)).toEqual(names);
  });
});
