import { describe, expect, it } from 'vitest';
import {
  chooseSetting,
  openADay,
  readPingHook,
  readQuietHours,
  readShopHours,
  standardSettings,
} from '../../../src/tracker/settings/index.ts';
import { hour } from '../../../src/tracker/time/index.ts';

describe('quiet hours', () => {
  it.each([
    ['22:00-7:00', { from: '22:00', to: '07:00' }],
    ['22-7', { from: '22:00', to: '07:00' }],
    [' 21:30 to 6:15 ', { from: '21:30', to: '06:15' }],
    ['none', 'none'],
  ])('%s', (text, hours) => {
    expect(readQuietHours(text)).toEqual(hours);
  });

  it.each(['', '22', '22-24', '7:60-8', '7-7', '22-7-8', 'night'])('are not "%s"', (text) => {
    expect(readQuietHours(text)).toBeNull();
  });
});

describe('shop hours', () => {
  it.each([
    ['8:00-18:00', 10],
    ['18:00-21:30', 3.5],
    ['22-6', 8],
    ['none', 10],
  ])('%s are so many hours a day; ten where none are told: %d', (text, hours) => {
    expect(openADay(text) / hour).toBe(hours);
  });

  it.each(['none', '', '8', '8-8', 'all day'])('are not "%s"', (text) => {
    expect(readShopHours(text)).toBeNull();
  });
});

describe('a ping hook', () => {
  it.each([
    ['/home/me/to-phone', ['/home/me/to-phone']],
    ['["to-phone", "--to", "two words"]', ['to-phone', '--to', 'two words']],
    ['none', 'none'],
  ])('%s', (text, hook) => {
    expect(readPingHook(text)).toEqual(hook);
  });

  it.each(['', 'to-phone --loud', '[]', '[""]', '["a", 1]', '["a"', '["a\\u0000b"]', '{}x y'])(
    'is not %s',
    (text) => {
      expect(readPingHook(text)).toBeNull();
    },
  );
});

it('keeps what was typed in one form, and says what would do', () => {
  const knowledge = { isZone: () => false, zones: () => [], acts: [] };
  expect(chooseSetting(standardSettings, 'quiet hours', '22-7', knowledge)).toMatchObject({
    ok: true,
    settings: { quiet: '22:00-07:00' },
  });
  expect(chooseSetting(standardSettings, 'shop-hours', '9-17:30', knowledge)).toMatchObject({
    ok: true,
    settings: { shopHours: '09:00-17:30' },
  });
  expect(chooseSetting(standardSettings, 'ping-hook', '/bin/x', knowledge)).toMatchObject({
    ok: true,
    settings: { hook: '["/bin/x"]' },
  });
  expect(chooseSetting(standardSettings, 'quiet', 'late', knowledge)).toMatchObject({
    ok: false,
    says: 'Not set: quiet hours can\'t be "late". Write two clock times, such as 22:00-7:00, or none.',
  });
});
