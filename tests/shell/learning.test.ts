import { existsSync, mkdtempSync, readFileSync, rmSync, statSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { describe, expect, it, onTestFinished } from 'vitest';
import { openForWriting, type FactStore } from '../../src/persist/index.ts';
import { createLearning } from '../../src/shell/learning.ts';
import { movePastPieces } from '../../src/shell/move-past.ts';
import { factsOfPiece, foldBench, type Bench } from '../../src/tracker/bench/index.ts';
import {
  estimatorFrom,
  notTaught,
  teachBench,
  teachImports,
} from '../../src/tracker/learning/index.ts';
import { standardSettings } from '../../src/tracker/settings/index.ts';
import { day } from '../../src/tracker/time/index.ts';
import { inventShop, monday, scheduleOf, step } from '../tracker/estimate/invented-shop.ts';

const wax = step('wax', { stepClass: 'wax' });
const schedule = scheduleOf([wax]);

/** A store whose pieces were waxed, left the bench, and lie in the history of their years. */
async function storeWithHistory(pieces: number) {
  const folder = mkdtempSync(join(tmpdir(), 'recoat-learning-'));
  const opened = await openForWriting(folder, {
    clock: { now: () => monday, today: () => '2026-11-16' },
  });
  if (!opened.ok) throw new Error(opened.problem.says);
  const store = opened.value;
  onTestFinished(() => {
    store.close();
    rmSync(folder, { recursive: true, force: true });
  });
  const shop = inventShop();
  for (let i = 0; i < pieces; i++) {
    const id = shop.add(`Piece ${i}`, schedule, monday);
    shop.work(id, i * 100, i * 100 + 60);
    shop.act({ do: 'take off bench', piece: id }, monday + day);
  }
  const facts = shop.facts();
  store.change(() => ({ append: { bench: facts }, result: null }));
  movePastPieces(store, 'UTC', monday + 9 * day);
  return { store, folder, shop };
}

/** One more piece, of another shop, so that nothing of it has the names of the first. */
function anotherPiece() {
  const shop = inventShop();
  for (let i = 0; i < 4; i++) shop.add('Never worked', schedule, monday);
  const id = shop.add('Another', schedule, monday);
  shop.work(id, 3000, 3045);
  return factsOfPiece(shop.facts(), id).facts.map((fact) => ({
    ...fact,
    id: `other ${fact.id}`,
    group: `other ${fact.group}`,
  }));
}

const benchOf = (store: FactStore): Bench => {
  const loaded = store.load();
  if (!loaded.ok) throw new Error(loaded.problem.says);
  return foldBench(loaded.value.bench);
};

const around = { readings: [], settings: standardSettings };

const modelOf = (folder: string, bench: Bench): string | undefined =>
  createLearning(folder).withLearned(bench, around).estimator?.expects(wax, { areaM2: null }).model;

describe('what the history taught', () => {
  it('is learned once, kept in a file, and read from there', async () => {
    const { store, folder } = await storeWithHistory(3);
    const bench = benchOf(store);
    expect(bench.pieces.size).toBe(0);
    expect(modelOf(folder, bench)).toBe('finishing schedule');
    expect(createLearning(folder).refresh(store, bench, [])).toBe(true);
    expect(modelOf(folder, bench)).toBe('learned minutes');
    expect(createLearning(folder).refresh(store, bench, [])).toBe(false);
    if (process.platform !== 'win32')
      expect(statSync(join(folder, 'learned.json')).mode & 0o777).toBe(0o600);
  });

  it('is learned again when the history is another, or a byte of the file is', async () => {
    const { store, folder } = await storeWithHistory(3);
    const bench = benchOf(store);
    createLearning(folder).refresh(store, bench, []);
    const path = join(folder, 'learned.json');
    const written = readFileSync(path, 'utf8');
    writeFileSync(path, written.replace('"steps":3', '"steps":9'));
    expect(modelOf(folder, bench)).toBe('finishing schedule');
    expect(createLearning(folder).refresh(store, bench, [])).toBe(true);
    expect(readFileSync(path, 'utf8')).toBe(written);
    // So does a byte of what only learning anew reads.
    writeFileSync(path, written.replace('"steps":0', '"steps":8'));
    expect(readFileSync(path, 'utf8')).not.toBe(written);
    expect(modelOf(folder, bench)).toBe('finishing schedule');
    writeFileSync(path, written);
    store.moveToHistory([{ year: 2026, facts: anotherPiece() }]);
    expect(createLearning(folder).refresh(store, bench, [])).toBe(true);
    // What somebody changed in the middle of a year shows in its length alone.
    const year = join(folder, 'history', '2026.json');
    writeFileSync(year, readFileSync(year, 'utf8').replace('"Piece 0"', '"Piece nought"'));
    expect(createLearning(folder).refresh(store, bench, [])).toBe(true);
    expect(createLearning(folder).refresh(store, bench, [])).toBe(false);
  });

  it('grows by a new year as it would be learned from all years at once', async () => {
    const { store, folder } = await storeWithHistory(2);
    const bench = benchOf(store);
    createLearning(folder).refresh(store, bench, []);
    store.moveToHistory([{ year: 2027, facts: anotherPiece() }]);
    createLearning(folder).refresh(store, bench, []);
    const path = join(folder, 'learned.json');
    const grown = readFileSync(path, 'utf8');
    rmSync(path);
    createLearning(folder).refresh(store, bench, []);
    expect(grown).toBe(readFileSync(path, 'utf8'));
    expect(grown).toContain('"steps":3');
  });

  it('forgets a piece of an earlier year too, as if that had never taught', async () => {
    const { store, folder, shop } = await storeWithHistory(2);
    store.moveToHistory([{ year: 2027, facts: anotherPiece() }]);
    createLearning(folder).refresh(store, benchOf(store), []);
    const [piece = ''] = shop.bench().pieces.keys();
    shop.act({ do: 'leave out of learning', piece, session: null, leave: true }, monday + 20 * day);
    const bench = shop.bench();
    const path = join(folder, 'learned.json');
    createLearning(folder).refresh(store, bench, []);
    const left = readFileSync(path, 'utf8');
    rmSync(path);
    createLearning(folder).refresh(store, bench, []);
    expect(JSON.parse(left.split('\n')[1] ?? '')).toMatchObject({
      whole: { minutes: { steps: 2 } },
    });
    expect(left).toBe(readFileSync(path, 'utf8'));
  });

  it('forgets a past piece that is left out, and learns from it again', async () => {
    const { store, folder, shop } = await storeWithHistory(1);
    createLearning(folder).refresh(store, benchOf(store), []);
    const [piece = ''] = shop.bench().pieces.keys();
    const leave = { do: 'leave out of learning', piece, session: null } as const;
    shop.act({ ...leave, leave: true }, monday + 10 * day);
    const without = shop.bench();
    expect(createLearning(folder).refresh(store, without, [])).toBe(true);
    expect(modelOf(folder, without)).toBe('finishing schedule');
    shop.act({ ...leave, leave: false }, monday + 10 * day);
    expect(createLearning(folder).refresh(store, shop.bench(), [])).toBe(true);
    expect(modelOf(folder, shop.bench())).toBe('learned minutes');
  });

  it('counts once for a piece that is back on the bench', async () => {
    const { store, folder, shop } = await storeWithHistory(2);
    createLearning(folder).refresh(store, benchOf(store), []);
    const learned = (bench: Bench) =>
      createLearning(folder).withLearned(bench, around).estimator?.expects(wax, { areaM2: null });
    // The shop still knows both pieces, as a store does once they were put back.
    expect(learned(shop.bench())).toEqual(learned(benchOf(store)));
    expect(existsSync(join(folder, 'learned.json'))).toBe(true);
  });

  it('comes after hours from elsewhere, which are older; and alone again once those are taken out', async () => {
    const { store, folder, shop } = await storeWithHistory(2);
    const expected = (bench: Bench) =>
      createLearning(folder).withLearned(bench, around).estimator?.expects(wax, { areaM2: null });
    createLearning(folder).refresh(store, benchOf(store), []);
    const alone = expected(benchOf(store));
    const row = { piece: 'Old', stepClass: 'wax', minutes: 200, estimate: 30 } as const;
    const rows = Array.from({ length: 20 }, (_, i) => ({ ...row, at: monday - (i + 1) * day }));
    const past = shop.bench();
    shop.act({ do: 'import hours', file: 'old.csv', fingerprint: 'f', rows }, monday + 10 * day);
    const imports = shop.bench().imports ?? [];
    const bench = { ...benchOf(store), imports };
    const unread = expected(bench);
    expect(createLearning(folder).refresh(store, bench, [])).toBe(true);
    expect(createLearning(folder).refresh(store, bench, [])).toBe(false);
    const first = teachBench(teachImports(notTaught, imports), past);
    const byHand = estimatorFrom(() => first.minutes).expects(wax, { areaM2: null });
    expect(expected(bench)).toEqual(byHand);
    // What was learned in another order comes out a little different: so the order was kept.
    expect(byHand).not.toEqual(unread);
    expect(byHand.minutes).toBeCloseTo(unread?.minutes ?? 0, -1);
    expect(expected(benchOf(store))).toEqual(alone);
  });
});
