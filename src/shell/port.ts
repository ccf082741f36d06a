import { join } from 'node:path';
import type { FactStore } from '../persist/index.ts';
import { tellCell } from '../persist/hours-import/tell-cell.ts';
import { readScheduleFolders, tellProblems } from '../persist/schedules/index.ts';
import { foldBench } from '../tracker/bench/index.ts';
import { chooseSetting, type SettingKnowledge } from '../tracker/settings/index.ts';
import { standardKeys } from '../views/keys/key-map.ts';
import type { ActReply, BenchPort, LookingBack, Snapshot } from '../views/port.ts';
import { createLookingBack } from './past/looking-back.ts';
import { startThread } from './past/start-thread.ts';
import { readHoursFile } from './read-hours-file.ts';
import { readHistories } from './recall.ts';
import type { Session } from './session.ts';
import type { World } from './world.ts';

export type PortOptions = {
  readonly session: Session;
  readonly world: World;
  readonly store: () => FactStore | null;
  readonly openDemo: (() => void) | undefined;
  /** Starts threads; absent: real ones. */
  readonly thread?: typeof startThread;
};

/** What screens ask of the program, on top of a session. */
export function createPort({
  session,
  world,
  store,
  openDemo,
  thread = startThread,
}: PortOptions): BenchPort {
  const no = (says: string, nearest: readonly string[] = []): ActReply => ({
    ok: false,
    says,
    nearest,
  });
  const { clock } = world;
  const lookBack = createLookingBack({ session, store, clock, start: thread });
  return {
    subscribe: (listener) => {
      const stops = [session.subscribe(listener), lookBack.subscribe(listener)];
      return () => {
        for (const stop of stops) stop();
      };
    },
    snapshot: withLookingBack(session.snapshot, lookBack.state),
    lookBack,
    act: session.act,
    takeReading: session.takeReading,
    acknowledge: session.acknowledge,
    choose: (name, text) => {
      const open = store();
      if (open === null) return no('Not changed: the store is still being opened. Press again.');
      const result = open.changeSettings((current) => {
        const outcome = chooseSetting(current, name, text, settingKnowledge);
        return { settings: outcome.ok ? outcome.settings : null, result: outcome };
      });
      if (!result.ok) return no(`${result.problem.says} ${result.problem.todo}`);
      if (!result.value.ok) return no(result.value.says, result.value.nearest);
      session.reload();
      return { ok: true, says: `${name} set`, piece: null };
    },
    schedules: async () => {
      const library = await readScheduleFolders(scheduleFolders(world, session.snapshot().folder));
      return {
        schedules: library.schedules,
        products: Object.values(library.products).sort((a, b) => (a.name < b.name ? -1 : 1)),
        problems: tellProblems(library.problems),
      };
    },
    past: () => {
      const open = store();
      if (open === null) return Promise.resolve({ bench: foldBench([]), problems: [] });
      const { facts, problems } = readHistories(open);
      return Promise.resolve({ bench: foldBench(facts), problems });
    },
    lookAtHours: async (file) => {
      const { zone } = session.snapshot().shop;
      const read = await readHoursFile(file, world, { now: clock.now(), zone });
      if ('refused' in read)
        return { rows: [], fingerprint: '', refused: [read.refused], passedOver: [] };
      return { ...read, refused: read.problems.map(tellCell) };
    },
    pingWays: session.pingWays,
    ...(openDemo === undefined ? {} : { openDemo }),
  };
}

/** The same object for as long as neither changes, as screens expect it. */
function withLookingBack(
  snapshot: () => Snapshot,
  looking: () => LookingBack | undefined,
): () => Snapshot {
  let last: { readonly of: Snapshot; readonly whole: Snapshot } | null = null;
  return () => {
    const [of, lookingBack] = [snapshot(), looking()];
    if (last?.of !== of || last.whole.lookingBack !== lookingBack)
      last = { of, whole: lookingBack === undefined ? of : { ...of, lookingBack } };
    return last.whole;
  };
}

/** Where finishing schedules are read from: the program's, and the user's own beside the data. */
export const scheduleFolders = (world: Pick<World, 'packageFolder'>, folder: string | null) => ({
  built: join(world.packageFolder, 'dist', 'templates.json'),
  templates: join(world.packageFolder, 'templates'),
  own: folder === null ? null : join(folder, 'schedules'),
});

/** Whether the machine knows a time zone of that name. */
export function isZone(name: string): boolean {
  try {
    new Intl.DateTimeFormat('en', { timeZone: name });
    return true;
  } catch {
    return false;
  }
}

/** What choosing a setting is checked against: the machine's zones, and the acts that keys can be given to. */
export const settingKnowledge: SettingKnowledge = {
  isZone,
  zones: () => Intl.supportedValuesOf('timeZone'),
  acts: standardKeys,
};
