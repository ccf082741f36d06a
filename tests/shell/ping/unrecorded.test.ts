import { expect, it } from 'vitest';
import { memoryStore, type FactStore } from '../../../src/persist/index.ts';
import { createUnrecorded } from '../../../src/shell/ping/unrecorded.ts';
import type { PingFact } from '../../../src/tracker/bench/index.ts';
import { hour, second } from '../../../src/tracker/time/index.ts';
import { claim, noon } from '../../persist/facts.ts';

const sent = (id: string, of: string): PingFact => ({
  ...claim(id),
  kind: 'ping-sent',
  body: { claim: of, ways: ['bell'], failures: [] },
});
const idsIn = (store: FactStore): readonly string[] => {
  const loaded = store.load();
  if (!loaded.ok) throw new Error(loaded.problem.says);
  return loaded.value.pings.map(({ id }) => id);
};

it('puts on record what went out from here, claim and outcome', () => {
  const store = memoryStore();
  const unrecorded = createUnrecorded(store);
  const mine = claim('mine');
  unrecorded.keep([mine, sent('out', 'mine')], noon);
  expect(unrecorded.retry(noon + 29 * second)).toBe(false);
  expect([...unrecorded.keys]).toEqual(mine.kind === 'ping-claimed' ? mine.body.pings : []);
  expect(unrecorded.retry(noon + 30 * second)).toBe(true);
  // From here on the store tells whether they went out, as of those of any other process.
  expect([...unrecorded.keys]).toEqual([]);
  expect(idsIn(store)).toEqual(['mine', 'out']);
  expect(unrecorded.retry(noon + hour)).toBe(false);
});

it('leaves out what another process has told meanwhile, and its outcome with it', () => {
  const store = memoryStore();
  const unrecorded = createUnrecorded(store);
  unrecorded.keep([claim('mine'), sent('out', 'mine')], noon);
  store.change(() => ({ append: { pings: [claim('theirs')] }, result: null }));
  expect(unrecorded.retry(noon + hour)).toBe(true);
  expect(idsIn(store)).toEqual(['theirs']);
});

it('does not wait for the time before a clock that was set back to come again', () => {
  const unrecorded = createUnrecorded(memoryStore());
  unrecorded.keep([claim('mine')], noon);
  expect(unrecorded.retry(noon - hour)).toBe(true);
});
