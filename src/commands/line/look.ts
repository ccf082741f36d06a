import {
  hasStore,
  openStore,
  type Loaded,
  type Notice,
  type OpenedStore,
  type StoreProblem,
} from '../../persist/index.ts';
import { isRunning, readKeeperMark } from '../../persist/presence/keeper-mark.ts';
import { clockReading } from '../../shell/clock.ts';
import { createLearning } from '../../shell/learning.ts';
import { readingsOf } from '../../shell/intent-context.ts';
import { senseIn } from '../../shell/shop-air.ts';
import { shopOf } from '../../shell/shop.ts';
import { shownPings } from '../../shell/shown-pings.ts';
import { foldBench, type Bench, type BenchFact } from '../../tracker/bench/index.ts';
import { noRules, type TradeRules } from '../../tracker/trade/index.ts';
import type { Settings } from '../../tracker/settings/index.ts';
import type { Instant } from '../../tracker/time/index.ts';
import { shopDay } from '../../views/format/zone.ts';
import type { Shop, ShownPing, Snapshot } from '../../views/port.ts';
import { failure, type Failure } from './command.ts';
import type { Room } from './room.ts';

/** The state of the shop at one instant, as screens and commands draw from it, and how wide a terminal text goes to. */
export type Look = Snapshot & { readonly now: Instant; readonly terminalColumns?: number | null };

/** Opens the store for reading, without anything that writing needs. */
export async function look(room: Room): Promise<Look | Failure> {
  const opened = await openToRead(room);
  return 'failed' in opened ? opened : lookAt(room, opened);
}

/** The same with the store, for what is read from the years gone by. */
export async function openToRead(room: Room): Promise<OpenedStore | Failure> {
  const { now } = room;
  const missing = missingStore(room);
  if (missing !== null) return missing;
  // A reader makes no backup, so the day is never asked for.
  const clock = { now: () => now, today: () => shopDay(now, 'auto') };
  const opened = await openStore(room.folder, { clock });
  if (!opened.ok) return storeFailure(opened.problem);
  opened.value.notices.forEach((notice) => room.tell(noticeText(notice)));
  return opened.value;
}

/** Where a folder was named in which no store is, that is said instead of showing an empty shop or beginning one. */
export function missingStore({ mustHaveStore, folder }: Room): Failure | null {
  if (!mustHaveStore || hasStore(folder)) return null;
  return failure(
    'store',
    `Not found: there is no store in ${folder}. To begin one there: recoat add NAME --schedule ID --folder ${folder}`,
  );
}

/**
 * What is loaded as a state to look at. Folded when it is first asked for, as some commands need only a part. Without
 * rules it says no cautions.
 */
export function lookAt(
  room: Room,
  loaded: Omit<Loaded, 'fingerprint'>,
  bench: readonly BenchFact[] = loaded.bench,
  rules: TradeRules = noRules,
): Look {
  const shop = shopIn(room, loaded.settings);
  const readings = readingsOf(loaded.conditions);
  let folded: Bench | null = null;
  let pings: readonly ShownPing[] | null = null;
  return {
    now: room.now,
    get bench() {
      return (folded ??= createLearning(room.folder).withLearned(
        foldBench(bench, undefined, clockReading(room.world.clock)),
        { readings, settings: loaded.settings },
      ));
    },
    get pings() {
      return (pings ??= shownPings(loaded.pings));
    },
    settings: loaded.settings,
    shop,
    sense: senseIn(shop, loaded.settings, readings),
    rules,
    readings,
    unwritten: new Set(),
    obstacle: null,
    notices: [],
    awake: null,
    keeper: keeperSeen(room),
    folder: room.folder,
    // Asked for only where text is drawn: looking at the stream makes it.
    get terminalColumns() {
      return room.world.columns ?? null;
    },
  };
}

/** By its mark and the number of its process: asking the lock would cost a command that only reads too much. */
const keeperSeen = ({ folder }: Room): Snapshot['keeper'] => {
  const mark = readKeeperMark(folder);
  return mark !== null && isRunning(mark) ? 'there' : 'none';
};

/** The shop's zone, clock and units; a zone named on the command line takes the place of the shop's. */
export const shopIn = ({ world, zone }: Room, settings: Settings): Shop =>
  shopOf(zone === null ? settings : { ...settings, zone }, world.here);

export const storeFailure = ({ says, todo }: StoreProblem): Failure =>
  failure('store', `${says} ${todo}`);

export const noticeText = ({ says, todo }: Notice): string => `${says} ${todo}`;
