import { expect, test } from 'vitest';
import { thinOldRecords } from '../../src/shell/thin-old-records.ts';
import type { BenchFact, ConditionsFact } from '../../src/tracker/bench/index.ts';
import { day, minute } from '../../src/tracker/time/index.ts';
import { claim, noon, note, pieceAdded, reading } from '../persist/facts.ts';
import { idsOf, newFolder, openReader, openWriter, valueOf } from '../persist/places.ts';

const longAgo = noon - 90 * day;
/** A script read the same air every five minutes for an hour. */
const readings: readonly ConditionsFact[] = Array.from({ length: 13 }, (_, index) => ({
  ...reading(`r${index}`),
  at: longAgo + index * 5 * minute,
}));

async function leftAtAStart(...bench: readonly BenchFact[]) {
  const folder = newFolder();
  const store = await openWriter(folder);
  const pings = [{ ...claim('old'), at: longAgo }, claim('new')];
  valueOf(store.change(() => ({ append: { bench, conditions: readings, pings }, result: null })));
  thinOldRecords(store, noon);
  const opened = await openReader(folder);
  return { conditions: idsOf(opened.conditions), pings: idsOf(opened.pings) };
}

test('what tells nothing any more is gone from the disk at a start, though nothing new is told', async () => {
  expect(await leftAtAStart()).toEqual({ conditions: ['r0', 'r12'], pings: ['new'] });
});

test('readings stay for as long as a piece is on the bench that may hang on them', async () => {
  const added = { ...pieceAdded('chest'), at: longAgo };
  expect((await leftAtAStart(added)).conditions).toEqual(idsOf(readings));
  const stamped: BenchFact = {
    ...note('stamp'),
    at: longAgo + 30 * minute,
    kind: 'stamped',
    body: {
      piece: 'chest',
      part: null,
      step: 'coat-1',
      event: 'first-stroke',
      agent: null,
      pass: 1,
      section: null,
      air: null,
    },
  };
  expect((await leftAtAStart(pieceAdded('chest'), stamped)).conditions).toEqual(idsOf(readings));
});
