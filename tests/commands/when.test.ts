import { describe, expect, it } from 'vitest';
import { readMoment } from '../../src/commands/read/read-moment.ts';
import { iso } from '../../src/commands/json/iso.ts';
import { openShop } from './support/shop.ts';

const zone = 'America/New_York';
const at = (text: string): number => Date.parse(text);
const now = at('2026-11-24T14:29:00-05:00');

describe('a time of day', () => {
  it.each([
    ['14:02', '2026-11-24T14:02:00-05:00'],
    ['2:02 pm', '2026-11-24T14:02:00-05:00'],
    ['2:02pm', '2026-11-24T14:02:00-05:00'],
    ['12:05 am', '2026-11-24T00:05:00-05:00'],
    ['12:05 pm', '2026-11-24T12:05:00-05:00'],
    ['0:05', '2026-11-24T00:05:00-05:00'],
    ['today 9:15', '2026-11-24T09:15:00-05:00'],
    ['yesterday 23:50', '2026-11-23T23:50:00-05:00'],
    ['yesterday at 23:50', '2026-11-23T23:50:00-05:00'],
    // Tuesday is today; Wednesday was last week.
    ['Tue 9:15', '2026-11-24T09:15:00-05:00'],
    ['Wed 9:15', '2026-11-18T09:15:00-05:00'],
    ['23 Nov 9:15', '2026-11-23T09:15:00-05:00'],
    ['Mon 23 Nov, 9:15', '2026-11-23T09:15:00-05:00'],
    ['30 Nov 9:15', '2025-11-30T09:15:00-05:00'],
    ['4 July 9:15', '2026-07-04T09:15:00-04:00'],
    ['2026-11-23 9:15', '2026-11-23T09:15:00-05:00'],
    ['2026-11-23T09:15:30Z', '2026-11-23T09:15:30Z'],
    ['2026-11-23T09:15+01:00', '2026-11-23T09:15:00+01:00'],
  ])('reads %j', (text, expected) => {
    expect(readMoment(text, now, zone)).toEqual({ ok: true, at: at(expected) });
  });

  // Still to come: whether that may be is for others to say.
  it('reads what lies ahead on the same day', () => {
    expect(readMoment('23:00', now, zone)).toEqual({
      ok: true,
      at: at('2026-11-24T23:00:00-05:00'),
    });
  });

  it.each([
    '',
    '14',
    '14:2',
    '24:00',
    '14:60',
    '1:99',
    '13:00 pm',
    '0:30 am',
    'noon',
    'someday 9:15',
    '11/12 9:15',
    '31 Nov 9:15',
    '2026-02-30 9:15',
    '2026-11-23T09:15',
    '2026-11-23T25:15Z',
    '-5',
  ])('refuses %j, and says how to write it', (text) => {
    const read = readMoment(text, now, zone);
    expect(read).toMatchObject({ ok: false, says: expect.stringContaining('Write 14:02') });
  });

  it.each(['tomorrow 9:15', 'in 3 days 9:15'])('reads %j as a time still to come', (text) => {
    const read = readMoment(text, now, zone);
    expect(read.ok && read.at).toBeGreaterThan(now);
  });

  // Clocks in New York went back from 2:00 to 1:00 on 1 November 2026 and forward on 8 March (IANA tz database).
  it('takes the first of a time that comes twice, and passes over one that never comes', () => {
    const november = at('2026-11-01T12:00:00-05:00');
    expect(readMoment('1:30', november, zone)).toEqual({
      ok: true,
      at: at('2026-11-01T01:30:00-04:00'),
    });
    expect(readMoment('2026-11-01T01:30-05:00', november, zone)).toEqual({
      ok: true,
      at: at('2026-11-01T01:30:00-05:00'),
    });
    const march = at('2026-03-08T12:00:00-04:00');
    expect(readMoment('2:30', march, zone)).toEqual({
      ok: true,
      at: at('2026-03-08T03:30:00-04:00'),
    });
  });
});

describe('an instant in JSON', () => {
  it.each([
    ['2026-11-24T14:29:00-05:00', 'America/New_York', '2026-11-24T14:29:00.000-05:00'],
    ['2026-07-04T09:15:00-04:00', 'America/New_York', '2026-07-04T09:15:00.000-04:00'],
    ['2026-11-24T19:29:00Z', 'Asia/Kolkata', '2026-11-25T00:59:00.000+05:30'],
    ['2026-11-24T19:29:00Z', 'America/St_Johns', '2026-11-24T15:59:00.000-03:30'],
    ['2026-11-24T19:29:00.125Z', 'UTC', '2026-11-24T19:29:00.125+00:00'],
  ])('%s in %s is %s', (instant, where, expected) => {
    expect(iso(at(instant), where)).toBe(expected);
    expect(Date.parse(expected)).toBe(at(instant));
  });
});

describe('when it happened', () => {
  const openWithPiece = async () => {
    const shop = openShop();
    await shop.does('add', 'Oak chest', '--schedule', 'glue-up-repair');
    shop.minutesLater(60);
    return shop;
  };

  it.each([
    ['--ago', '10min', '2026-11-24T15:19:00.000-05:00'],
    ['--ago', '0:50', '2026-11-24T14:39:00.000-05:00'],
    ['--at', '14:35', '2026-11-24T14:35:00.000-05:00'],
  ])('is told with %s %s', async (flag, value, expected) => {
    const shop = await openWithPiece();
    const { at: told, row } = await shop.json('pick-up', '1', flag, value);
    expect(told).toBe(expected);
    expect(row?.inHandSince).toBe(expected);
  });

  it('is read on the clock of the zone that is named', async () => {
    const shop = await openWithPiece();
    const { at: told } = await shop.json('pick-up', '1', '--at', '19:35', '--zone', 'UTC');
    expect(told).toBe('2026-11-24T19:35:00.000+00:00');
  });

  it('is never still to come', async () => {
    const shop = await openWithPiece();
    expect(await shop.refuses('pick-up', '1', '--at', '15:30')).toEqual({
      code: 1,
      says: 'Not picked up: that time is still to come. Give one that has passed.',
    });
    expect(await shop.does('sessions', '1')).toContain('was never in hand');
  });

  it.each(['-5', '90x', '1:99', '0', ''])('is not %j ago', async (value) => {
    const shop = await openWithPiece();
    const { code, says } = await shop.refuses('pick-up', '1', '--ago', value);
    expect(code).toBe(64);
    expect(says).toMatch(/^Not picked up: .*Write 35, 35 min, 1:20, 2 h or 3 d\.$/);
  });

  it('is told once', async () => {
    const shop = await openWithPiece();
    expect(await shop.refuses('done', '1', '--ago', '5', '--at', '14:30')).toEqual({
      code: 64,
      says: 'Not done: give --at or --ago, not both.',
    });
  });
});
