import { rmSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { together } from '../../src/commands/line/look-back.ts';
import { openForWriting, openStore } from '../../src/persist/index.ts';
import { factsOfPiece, foldBench } from '../../src/tracker/bench/index.ts';
import { openShop, type Shop } from './support/shop.ts';

const withPieces = async (): Promise<Shop> => {
  const shop = openShop();
  for (const name of ['Oak chest', 'Elm chair'])
    await shop.does('add', name, '--schedule', 'glue-up-repair');
  await shop.does('pick-up', '1');
  shop.minutesLater(45);
  return shop;
};

const storeOf = async (shop: Shop) => {
  const clock = { now: shop.now, today: () => '2026-11-24' };
  const opened = await openForWriting(shop.folder, { clock });
  if (!opened.ok) throw new Error(opened.problem.says);
  return opened.value;
};

/** What a screen does when it opens: pieces that have left go to the history of their year. */
const moveToHistory = async (shop: Shop): Promise<void> => {
  const store = await storeOf(shop);
  const loaded = store.load();
  if (!loaded.ok) throw new Error(loaded.problem.says);
  const { bench } = loaded.value;
  const gone = [...foldBench(bench).pieces.values()].filter(({ place }) => place !== 'bench');
  store.moveToHistory(gone.map(({ id }) => ({ year: 2026, ...factsOfPiece(bench, id) })));
  store.close();
};

const onBench = async (shop: Shop): Promise<readonly string[]> =>
  (await shop.json('bench')).rows.map(({ piece }) => piece?.name ?? '');

describe('a piece that leaves the bench', () => {
  it('is put down, listed, found and looked back on', async () => {
    const shop = await withPieces();
    expect(await shop.does('off-bench', 'oak')).toContain('Oak chest off the bench');
    expect(await onBench(shop)).toEqual(['Elm chair']);
    const { pieces } = await shop.json('past');
    expect(pieces).toEqual([
      {
        id: pieces[0]?.id,
        number: null,
        name: 'Oak chest',
        schedule: 'glue-up-repair',
        added: '2026-11-24T14:29:00.000-05:00',
        left: '2026-11-24T15:14:00.000-05:00',
        minutes: 45,
      },
    ]);
    expect(await shop.does('past', '--find', 'CHEST glue')).toBe(
      'Tue 24 Nov 2026  Oak chest  Glue-up repair  45 min\n',
    );
    expect(await shop.does('job-card', 'Oak')).toContain('Job card: Oak chest');
    expect((await shop.json('hours', 'Oak chest')).recordedMinutes).toBe(45);
    expect((await shop.json('hours')).pieces).toBe(1);
    expect(await shop.refuses('past', '--find', 'Oak chst')).toEqual({
      code: 2,
      says: 'Not found: no past piece has "Oak chst" in it. Nearest: Oak chest.',
    });
    expect(await shop.refuses('pick-up', 'Oak')).toMatchObject({ code: 2 });
  });

  it('comes back with its record, also out of the history of a year', async () => {
    const shop = await withPieces();
    await shop.does('off-bench', '1');
    await moveToHistory(shop);
    expect((await shop.json('past')).pieces).toHaveLength(1);
    expect((await shop.json('job-card', 'oak')).minutes).toBe(45);
    expect((await shop.json('hours')).pieces).toBe(1);

    expect(await shop.does('put-back', 'Oak')).toContain('1 Oak chest back on the bench');
    expect([...(await onBench(shop))].sort()).toEqual(['Elm chair', 'Oak chest']);
    expect((await shop.json('job-card', '1')).minutes).toBe(45);
    expect((await shop.json('past')).pieces).toEqual([]);
    expect(await shop.refuses('put-back', 'Oak chest')).toMatchObject({ code: 1 });
  });

  it('takes a note where it is', async () => {
    const shop = await withPieces();
    await shop.does('off-bench', '1');
    await moveToHistory(shop);
    await shop.does('note', 'Oak', 'sold', 'to', 'a', 'neighbour');
    const { rows } = await shop.json('job-card', 'Oak');
    expect(rows.filter(({ row }) => row === 'note')).toMatchObject([
      { text: 'sold to a neighbour', step: null },
    ]);
    expect(await onBench(shop)).toEqual(['Elm chair']);
  });

  it('is told apart by the day on which it left', async () => {
    const shop = await withPieces();
    await shop.does('off-bench', '1');
    shop.minutesLater(24 * 60);
    await shop.does('add', 'Oak chest', '--schedule', 'glue-up-repair');
    await shop.does('off-bench', '1');
    expect(await shop.refuses('job-card', 'Oak chest')).toEqual({
      code: 2,
      says: 'Not shown: "Oak chest" could be 2 pieces. Write more of the name, or the number. Nearest: Oak chest 2026-11-25, Oak chest 2026-11-24.',
    });
    expect(await shop.json('job-card', 'Oak chest 2026-11-24')).toMatchObject({ minutes: 45 });
    expect(await shop.json('job-card', 'Oak chest 2026-11-25')).toMatchObject({ minutes: 0 });
  });

  it('is told where a year of the history is lost, and the rest goes on', async () => {
    const shop = await withPieces();
    await shop.does('off-bench', '1');
    await moveToHistory(shop);
    const { writeFileSync } = await import('node:fs');
    for (const name of ['2026.prev.json', '2026.json'])
      rmSync(join(shop.folder, 'history', name), { force: true });
    writeFileSync(join(shop.folder, 'history', '2026.json'), '{"recoat":1,"facts":[\n');
    const { code, out, err } = await shop.run(['past']);
    expect(code).toBe(0);
    expect(out).toBe('No piece has left the bench yet.\n');
    expect(err).toContain('2026');
  });
});

describe('removing a piece', () => {
  const asked: string[] = [];
  const answering = (answer: boolean) => ({
    ask: (question: string) => {
      asked.push(question);
      return Promise.resolve(answer);
    },
  });

  it('asks first', async () => {
    const shop = await withPieces();
    const no = await shop.run(['remove', '1'], answering(false));
    expect(no).toEqual({ code: 1, out: '', err: 'Not removed: you said no.\n' });
    expect(asked.at(-1)).toBe(
      'Remove 1 Oak chest? Hidden, left out of learning; the record stays.',
    );
    expect(await onBench(shop)).toContain('Oak chest');
    const yes = await shop.run(['remove', '1'], answering(true));
    expect(yes).toMatchObject({ code: 0, out: '1 Oak chest removed\n' });
    expect(await onBench(shop)).toEqual(['Elm chair']);
    expect((await shop.json('past')).pieces).toEqual([]);
    expect((await shop.json('hours')).pieces).toBe(0);
  });

  it('needs --yes where nobody is there to be asked', async () => {
    const shop = await withPieces();
    expect(await shop.refuses('remove', '1')).toEqual({
      code: 1,
      says: 'Not removed: nobody is here to be asked. Give --yes.',
    });
    await shop.does('remove', '1', '--yes');
    expect(await onBench(shop)).toEqual(['Elm chair']);
  });

  it('keeps the record', async () => {
    const shop = await withPieces();
    await shop.does('off-bench', '1');
    await moveToHistory(shop);
    await shop.does('remove', 'Oak chest', '--yes');
    expect((await shop.json('past')).pieces).toEqual([]);
    await shop.does('take-back');
    expect((await shop.json('past')).pieces).toHaveLength(1);
    const opened = await openStore(shop.folder, {
      clock: { now: shop.now, today: () => '2026-11-24' },
    });
    expect(opened.ok && opened.value.historyYears()).toEqual([2026]);
  });

  it('offers the nearest for a piece that is none, before it asks', async () => {
    const shop = await withPieces();
    const before = asked.length;
    const { code, err } = await shop.run(['remove', 'Elm chiar'], answering(true));
    expect({ code, err }).toEqual({
      code: 2,
      err: 'Not removed: there is no piece "Elm chiar". Nearest: 2 Elm chair.\n',
    });
    expect(asked).toHaveLength(before);
  });
});

it('a fact that stands in several years, of a piece that came back, counts once', async () => {
  const shop = await withPieces();
  const opened = await openStore(shop.folder, {
    clock: { now: shop.now, today: () => '2026-11-24' },
  });
  if (!opened.ok) throw new Error(opened.problem.says);
  const facts = opened.value.bench;
  expect(together(facts.slice(0, 3), facts.slice(1))).toEqual(facts);
});
