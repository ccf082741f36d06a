import { mkdtemp, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import {
  openForWriting,
  openStore,
  type FactStore,
  type OpenedStore,
} from '../../persist/index.ts';
import { readScheduleFolders } from '../../persist/schedules/index.ts';
import { readingsOf } from '../../shell/intent-context.ts';
import { createLearning } from '../../shell/learning.ts';
import { scheduleFolders } from '../../shell/port.ts';
import { senseOf, shopOf } from '../../shell/shop.ts';
import type { World } from '../../shell/world.ts';
import { foldBench } from '../../tracker/bench/index.ts';
import { standardSettings } from '../../tracker/settings/index.ts';
import { shopDay } from '../../views/format/index.ts';
import { inventShop } from './invented-shop.ts';

/** The invented shop in a store of its own that is thrown away when it is closed. */
export type DemoStore = {
  readonly opened: OpenedStore;
  readonly store: FactStore;
  readonly throwAway: () => Promise<void>;
};

/** Makes the demo's store in a temporary folder. Throws only where that folder can't be made or written. */
export async function openDemoStore(world: World): Promise<DemoStore> {
  const folder = join(await mkdtemp(join(tmpdir(), 'recoat-demo-')), 'store');
  const shop = shopOf(standardSettings, world.here);
  const clock = { now: world.clock.now, today: () => shopDay(world.clock.now(), shop.zone) };
  const library = await readScheduleFolders(scheduleFolders(world, null));
  const invented = inventShop(library.schedules, world.clock.now(), shop.zone, senseOf(shop));
  const store = must(await openForWriting(folder, { clock }));
  must(
    store.change(() => ({
      append: { bench: invented.bench, conditions: invented.conditions },
      result: null,
    })),
  );
  must(store.moveToHistory(invented.past));
  // What its half year has taught is known from the first frame on, and to commands too.
  createLearning(folder).refresh(store, foldBench(invented.bench), readingsOf(invented.conditions));
  const opened = must(await openStore(folder, { clock }));
  return {
    opened,
    store,
    throwAway: () => rm(join(folder, '..'), { recursive: true, force: true }),
  };
}

function must<T>(
  result:
    | { readonly ok: true; readonly value: T }
    | { readonly ok: false; readonly problem: { readonly says: string; readonly todo: string } },
): T {
  if (result.ok) return result.value;
  throw new Error(`${result.problem.says} ${result.problem.todo}`);
}
