import { expect, it } from 'vitest';
import { tellingNow } from '../../src/shell/unwritten.ts';
import { hour, minute, second } from '../../src/tracker/time/index.ts';
import { startOfTests } from './support/stepped-clock.ts';

it('what is told again after the clock was set moves along, the key and the time that was given with it', () => {
  const clock = { told: startOfTests, uptimeMs: 60_000, bootId: 'boot' };
  const present = { told: startOfTests + hour + 2 * second, uptimeMs: 62_000, bootId: 'boot' };
  const given = { clock, at: startOfTests - 5 * minute, group: 'g' };
  expect(tellingNow(given, present)).toMatchObject({
    clock: { told: startOfTests + hour },
    at: startOfTests + hour - 5 * minute,
    group: 'g',
  });
  expect(tellingNow({ ...given, at: undefined }, present).at).toBeUndefined();
});
