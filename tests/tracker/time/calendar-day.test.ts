import { expect, test } from 'vitest';
import { isCalendarDay } from '../../../src/tracker/time/index.ts';

// Leap years after the Gregorian rule (ISO 8601, section 2.2.15 of the 2004 edition, from memory).
test.each(['2026-05-04', '2024-02-29', '2000-02-29', '2026-12-31', '9999-01-01'])(
  '%s is a day',
  (text) => {
    expect(isCalendarDay(text)).toBe(true);
  },
);

test.each([
  '2026-02-29',
  '1900-02-29',
  '2026-13-01',
  '2026-00-10',
  '2026-04-31',
  '2026-5-4',
  '04.05.2026',
  'tomorrow',
  '',
  '2026-05-04T08:00',
])('%j is none', (text) => {
  expect(isCalendarDay(text)).toBe(false);
});
