import { expect, it } from 'vitest';
import { shownPings } from '../../src/shell/shown-pings.ts';
import type { PingFact } from '../../src/tracker/bench/index.ts';
import { minute } from '../../src/tracker/time/index.ts';
import { claim, noon } from '../persist/facts.ts';

it('was seen when the first key took note of it, though two screens did', () => {
  const seen = (id: string, after: number): PingFact => ({
    ...claim(id),
    at: noon + after,
    kind: 'ping-acknowledged',
    body: { claim: 'c' },
  });
  const shown = shownPings([claim('c'), seen('one', minute), seen('other', 2 * minute)]);
  expect(shown).toMatchObject([{ claim: 'c', seenAt: noon + minute }]);
});
