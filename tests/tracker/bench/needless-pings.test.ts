import { expect, test } from 'vitest';
import { foldBench, needlessPings, type PingFact } from '../../../src/tracker/bench/index.ts';
import { day, type Instant } from '../../../src/tracker/time/index.ts';
import { at } from '../support/instants.ts';
import { past } from '../support/past.ts';
import { twoCoats } from '../support/schedules.ts';

const head = (id: string, when: Instant) => ({
  id,
  group: id,
  at: when,
  told: when,
  by: 'clock' as const,
  uptimeMs: null,
  bootId: null,
});

/** A claim, its sending, and that it was seen. */
const ping = (id: string, key: string, when: Instant): readonly PingFact[] => [
  {
    ...head(id, when),
    kind: 'ping-claimed',
    body: { pings: [key], text: 'x', loud: false, piece: null },
  },
  { ...head(`${id}-s`, when), kind: 'ping-sent', body: { claim: id, ways: [], failures: [] } },
  { ...head(`${id}-a`, when), kind: 'ping-acknowledged', body: { claim: id } },
];

const bench = foldBench(past().added('chest', twoCoats).facts);

test('pings of long ago go with all that is about them, unless their piece is still there', () => {
  const now = at('9:00');
  const facts = [
    ...ping('old', 'gone/coat 1/recoat//1//f/opens 1', now - 60 * day),
    ...ping('here', 'chest/coat 1/recoat//1//f/opens 1', now - 600 * day),
    ...ping('held', 'hold/chest/1', now - 90 * day),
    ...ping('timer', 'timer/t-1/f/opens 1', now - 90 * day),
    ...ping('new', 'gone/coat 1/recoat//1//f/late 2', now - 60 * day + 1),
  ];
  expect([...needlessPings(facts, bench, now)].toSorted()).toEqual([
    'old',
    'old-a',
    'old-s',
    'timer',
    'timer-a',
    'timer-s',
  ]);
});
