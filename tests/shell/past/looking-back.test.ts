import { writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { setImmediate as turn, setTimeout as wait } from 'node:timers/promises';
import { describe, expect, it, onTestFinished } from 'vitest';
import { memoryStore, type FactStore } from '../../../src/persist/index.ts';
import { createLookingBack } from '../../../src/shell/past/looking-back.ts';
import { startThread } from '../../../src/shell/past/start-thread.ts';
import { createSession } from '../../../src/shell/session.ts';
import { foldBench } from '../../../src/tracker/bench/index.ts';
import { hoursOfFinished } from '../../../src/tracker/estimate/index.ts';
import { reviewOf } from '../../../src/tracker/review/index.ts';
import { day } from '../../../src/tracker/time/index.ts';
import { noRules } from '../../../src/tracker/trade/index.ts';
import { monthIn } from '../../../src/views/format/index.ts';
import { monday } from '../../tracker/estimate/invented-shop.ts';
import { pastShop } from './past-shop.ts';

const now = monday + 9 * day;
const clock = { now: () => now, uptime: () => null, bootId: null };

function lookingBackOn(store: FactStore, start = startThread) {
  const loaded = store.load();
  if (!loaded.ok) throw new Error(loaded.problem.says);
  let ids = 0;
  const session = createSession({
    loaded: loaded.value,
    notices: [],
    folder: store.folder,
    rules: noRules,
    store: () => store,
    clock,
    newId: () => `key-${(ids += 1)}`,
    here: { zone: 'UTC', locale: 'en-GB' },
    soon: (work) => setImmediate(work),
  });
  const looking = createLookingBack({ session, store: () => store, clock, start });
  onTestFinished(() => looking.end());
  const until = async (isSo: () => boolean): Promise<void> => {
    const began = Date.now();
    while (!isSo()) {
      if (Date.now() - began > 20_000)
        throw new Error(
          `waited in vain; it is at ${JSON.stringify(looking.state())?.slice(0, 300)}`,
        );
      await wait(5);
    }
  };
  return { session, looking, until };
}

describe('looking back in a thread of its own', () => {
  it('reads all years and reviews them with the bench, as it would be done on the spot', async () => {
    const { store, shop } = await pastShop(4);
    const { looking, until } = lookingBackOn(store);
    expect(looking.state()).toBeUndefined();
    const seen: (string | undefined)[] = [];
    looking.subscribe(() => seen.push(looking.state()?.is));
    looking.begin();
    expect(looking.state()?.is).toBe('reading');
    await until(() => looking.state()?.review !== null);
    expect(looking.state()).toMatchObject({ is: 'waiting', problems: [] });
    expect(looking.state()?.review?.pieces).toBe(9);
    const whole = reviewOf(hoursOfFinished([foldBench(shop.facts())], now), monthIn('UTC'));
    const own = looking.state()?.review;
    // Of equals either may come first, so steps and pieces are compared without their order.
    const leans = (of: typeof own) => of?.classes.map(({ steps, ...lean }) => [lean, steps.length]);
    const names = (of: typeof own) => of?.outcomes.pieces.map(({ piece }) => piece.id).sort();
    expect([own?.held, own?.since, own?.until]).toEqual([whole.held, whole.since, whole.until]);
    expect(leans(own)).toEqual(leans(whole));
    expect(names(own)).toEqual(names(whole));
    expect(own?.went.working).toBeCloseTo(whole.went.working, 6);
    expect(seen).toContain('waiting');
  });

  it('foretells every step anew on request, once', async () => {
    const { store } = await pastShop(6);
    const { looking, until } = lookingBackOn(store);
    looking.begin();
    // Asked for before the years are read, it waits for them.
    looking.backTest();
    await until(() => looking.state()?.backTest?.done === 13);
    expect(looking.state()).toMatchObject({ is: 'waiting', done: 13, of: 13 });
    expect(looking.state()?.backTest?.whole?.steps).toBe(12);
    const before = looking.state();
    looking.backTest();
    await wait(50);
    expect(looking.state()).toBe(before);
  });

  it('takes over what changes on the bench meanwhile', async () => {
    const { store, last } = await pastShop(2);
    const { looking, session, until } = lookingBackOn(store);
    looking.begin();
    await until(() => looking.state()?.review?.pieces === 5);
    session.act({ do: 'remove piece', piece: last });
    await until(() => looking.state()?.review?.pieces === 4);
  });

  it('brings a past piece with what is recorded of it, also after it was stopped', async () => {
    const { store, ids } = await pastShop(2);
    const { looking, until } = lookingBackOn(store);
    const [first = ''] = ids;
    looking.begin();
    looking.stop();
    looking.find(first);
    await until(() => looking.state()?.found?.piece === first);
    const piece = looking.state()?.found?.bench.pieces.get(first);
    expect(piece?.finishes).toHaveLength(1);
  });

  it('stops at once, keeps what it has, and tells nothing more', async () => {
    const { store } = await pastShop(3);
    const { looking, until } = lookingBackOn(store);
    looking.begin();
    await until(() => looking.state()?.review !== null);
    looking.backTest();
    looking.stop();
    const stopped = looking.state();
    expect(stopped).toMatchObject({ is: 'stopped' });
    expect(stopped?.review?.pieces).toBe(7);
    await wait(200);
    expect(looking.state()).toBe(stopped);
    looking.begin();
    expect(looking.state()).toMatchObject({ is: 'reading', review: stopped?.review });
    looking.end();
    expect(looking.state()).toBeUndefined();
  });

  it('names years that can not be read and goes on with the others', async () => {
    const { store, folder } = await pastShop(2);
    writeFileSync(join(folder, 'history', '2023.json'), '{"recoat": 99, "facts": []}');
    const { looking, until } = lookingBackOn(store);
    looking.begin();
    await until(() => looking.state()?.review !== null);
    expect(looking.state()?.review?.pieces).toBe(5);
    expect(looking.state()?.problems.join()).toMatch(
      /^Not opened: .*2023\.json was written by a newer/,
    );
  });

  it('says in words why its thread failed', async () => {
    const { store } = await pastShop(1);
    const { looking } = lookingBackOn(store, (_, { failed }) => {
      setImmediate(() => failed('memory ran out'));
      return { wish: () => undefined, stop: () => undefined };
    });
    looking.begin();
    await turn();
    await turn();
    expect(looking.state()).toMatchObject({ is: 'failed', says: 'memory ran out.' });
    const { looking: other } = lookingBackOn(store, () => {
      throw new Error('no thread to be had');
    });
    other.begin();
    expect(other.state()).toMatchObject({ is: 'failed', says: 'no thread to be had.' });
  });

  it('reads the invented shop, which lies in no folder', async () => {
    const { shop, ids } = await pastShop(2);
    const facts = shop.facts();
    const store = memoryStore({ bench: facts });
    const gone = facts.filter((fact) => JSON.stringify(fact).includes(ids[0] ?? ''));
    store.moveToHistory([{ year: 2024, facts: gone }]);
    const { looking, until } = lookingBackOn(store);
    looking.begin();
    await until(() => looking.state()?.review !== null);
    expect(looking.state()?.review?.pieces).toBe(5);
  });
});

describe('a thread', () => {
  it('tells what it can not do, and ends', async () => {
    const why = await new Promise<string>((resolve) => {
      startThread(
        { do: 'look back', years: null as never, bench: null as never, zone: 'UTC' },
        { told: () => undefined, failed: resolve },
      );
    });
    expect(why).toMatch(/null/);
  });
});
