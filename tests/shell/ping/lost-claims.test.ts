import { expect, it } from 'vitest';
import { lostClaims } from '../../../src/shell/ping/lost-claims.ts';
import { hour, second } from '../../../src/tracker/time/index.ts';
import { claim, noon } from '../../persist/facts.ts';

const none = new Set<string>();
/** A claim that seems to be still to come, since the clock was set back after it was made. */
const ahead = { ...claim('c'), at: noon + hour };
const present = { told: noon, uptimeMs: 95_000, bootId: 'boot-1' };

it('counts a claim by the time since the machine started, however the clock was set meanwhile', () => {
  expect([...lostClaims([ahead], none, present).claims]).toEqual([]);
  const later = { ...present, uptimeMs: (ahead.uptimeMs ?? 0) + 30 * second };
  expect([...lostClaims([ahead], none, later).claims]).toEqual(['c']);
});

it('gives a claim half a minute after a standstill, also where the clock was set back since that', () => {
  const made = { ...claim('c'), at: noon - hour };
  const now = { told: noon, uptimeMs: 90_000 + hour, bootId: 'boot-1' };
  for (const wokeAt of [noon, noon + hour])
    expect(lostClaims([made], none, now, wokeAt).nextAt).toBe(noon + 30 * second);
});

it('counts a claim of an earlier start of the machine as lost: its sender ended with it', () => {
  const restarted = { told: noon, uptimeMs: 5_000, bootId: 'boot-2' };
  expect([...lostClaims([ahead], none, restarted).claims]).toEqual(['c']);
});
