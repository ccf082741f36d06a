import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { onTestFinished } from 'vitest';
import { openForWriting, type FactStore } from '../../../src/persist/index.ts';
import { factsOfPiece } from '../../../src/tracker/bench/index.ts';
import { day } from '../../../src/tracker/time/index.ts';
import { inventShop, monday, scheduleOf, step } from '../../tracker/estimate/invented-shop.ts';

const wax = step('wax', { stepClass: 'wax', minutes: { typical: 60, low: 40, high: 90 } });

/** A store of invented pieces, each waxed in an hour or so: as many in the history of each year, and one finished on the bench. */
export async function pastShop(pieces: number, years: readonly number[] = [2024, 2025]) {
  const folder = mkdtempSync(join(tmpdir(), 'recoat-past-'));
  const opened = await openForWriting(folder, {
    clock: { now: () => monday, today: () => '2026-11-16' },
  });
  if (!opened.ok) throw new Error(opened.problem.says);
  const store: FactStore = opened.value;
  onTestFinished(() => {
    store.close();
    rmSync(folder, { recursive: true, force: true });
  });
  const shop = inventShop();
  const ids = years.flatMap((_, round) =>
    Array.from({ length: pieces }, (__, index) => {
      const from = (round * pieces + index) * 100;
      const id = shop.add(`Piece ${index}`, scheduleOf([wax]), monday);
      shop.work(id, from, from + 50 + index);
      shop.act({ do: 'take off bench', piece: id }, monday + day);
      return id;
    }),
  );
  const last = shop.add('On the bench', scheduleOf([wax]), monday);
  shop.work(last, 9000, 9066);
  for (const [index, year] of years.entries())
    store.moveToHistory(
      ids
        .slice(index * pieces, (index + 1) * pieces)
        .map((id) => ({ year, facts: factsOfPiece(shop.facts(), id).facts })),
    );
  store.change(() => ({
    append: { bench: factsOfPiece(shop.facts(), last).facts },
    result: null,
  }));
  return { folder, store, shop, ids, last };
}
