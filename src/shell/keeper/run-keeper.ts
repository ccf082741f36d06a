import { spawn } from 'node:child_process';
import { openStore, type FactStore, type StoreProblem } from '../../persist/index.ts';
import {
  isKeeperPresent,
  isScreenPresent,
  leaveKeeperMark,
  presentAsKeeper,
  takeKeeperMark,
} from '../../persist/presence/index.ts';
import { spoilsRunning } from '../../tracker/bench/index.ts';
import type { Instant, Milliseconds } from '../../tracker/time/index.ts';
import { noRules } from '../../tracker/trade/index.ts';
import { shopDay } from '../../views/format/index.ts';
import { startBackground } from '../background.ts';
import { learnBeside } from '../past/learn-beside.ts';
import { createAwake } from '../ping/awake.ts';
import { createDiagnostics } from '../ping/diagnostics.ts';
import { createPinger, type Pinger } from '../ping/pinger.ts';
import { createSession } from '../session.ts';
import type { World } from '../world.ts';
import { createWaking } from './waking.ts';

export type KeeperOptions = {
  readonly world: World;
  /** The folder of the store. */
  readonly folder: string;
  /** Goes on while nothing is running, for those who start it under a supervisor of their own. */
  readonly stays: boolean;
  /** Looks at clock and store at least this often. */
  readonly longestWait?: Milliseconds;
  /** Told what goes out, a line each. */
  readonly tell: (line: string) => void;
  /** Calls `end` when the process is asked to end. */
  readonly untilTold: (end: () => void) => () => void;
};

export type KeeperEnd =
  | { readonly because: 'nothing runs' | 'told to' | 'another is there' }
  | { readonly because: 'store'; readonly problem: StoreProblem };

/**
 * Pings while no screen is open. While one is, it stands aside. One keeper watches a folder at a time.
 * @returns why it ended.
 */
export async function runKeeper(options: KeeperOptions): Promise<KeeperEnd> {
  const { world, folder } = options;
  const { clock } = world;
  const opened = await openStore(folder, {
    clock: { now: clock.now, today: () => shopDay(clock.now(), 'auto') },
  });
  if (!opened.ok) return { because: 'store', problem: opened.problem };
  const presence = presentAsKeeper(folder);
  if (presence === null) {
    return isKeeperPresent(folder)
      ? { because: 'another is there' }
      : { because: 'store', problem: noPlace(folder) };
  }
  leaveKeeperMark(folder, { pid: process.pid, began: clock.now() });
  try {
    return await watchOver(options, opened.value);
  } finally {
    takeKeeperMark(folder);
    presence.leave();
  }
}

/** Without its file two keepers would know nothing of each other, and both would ping. */
const noPlace = (folder: string): StoreProblem => ({
  kind: 'unwritable',
  file: folder,
  says: `Not begun: ${folder} can't be written, so that a keeper can't say that it is there.`,
  todo: 'Check whose the folder is, its rights, and whether its disk can only be read.',
});

async function watchOver(
  { world, folder, stays, longestWait, tell, untilTold }: KeeperOptions,
  loaded: Parameters<typeof createSession>[0]['loaded'],
): Promise<KeeperEnd> {
  const { clock, env, platform } = world;
  let store: FactStore | null = null;
  const session = createSession({
    loaded,
    notices: [],
    // It records no work, so it has no cautions to say.
    rules: noRules,
    folder,
    store: () => store,
    clock,
    newId: world.newId,
    here: world.here,
    soon: (work) => setImmediate(work),
    learnBeside: learnBeside(),
  });
  const seconds = (): boolean => {
    const { bench, sense } = session.snapshot();
    return spoilsRunning(bench, clock.now(), sense).length > 0;
  };
  const waking = createWaking(clock, seconds, longestWait);
  const stopReading = waking.subscribe(session.reload);
  const awake = createAwake({ platform, env, spawn });
  const pinger = createPinger({
    settings: () => session.snapshot().settings,
    write: null,
    platform,
    env,
    onNotice: tell,
  });
  /** A ping that is on its way out, of which the store has still to be told. */
  const sending = new Set<Promise<unknown>>();
  const ended = Promise.withResolvers<KeeperEnd>();
  const stopListening = untilTold(() => ended.resolve({ because: 'told to' }));
  const looked = (next: Instant | null): void => {
    if (next === null && !stays && sending.size === 0) ended.resolve({ because: 'nothing runs' });
  };
  const background = await startBackground({
    world,
    session,
    ticker: waking,
    pinger: watched(pinger, tell, sending),
    awake,
    diagnostics: createDiagnostics({ folder }),
    folder,
    given: null,
    opened: (open) => {
      store = open;
    },
    by: 'keeper',
    standsAside: () => isScreenPresent(folder),
    looked,
  });
  try {
    return await ended.promise;
  } finally {
    await Promise.all(sending);
    await new Promise((resolve) => setImmediate(resolve));
    stopListening();
    stopReading();
    background.stop();
    waking.stop();
    awake.want(null);
    session.flush();
    (store as FactStore | null)?.close();
  }
}

const watched = (
  pinger: Pinger,
  tell: (line: string) => void,
  sending: Set<Promise<unknown>>,
): Pinger => ({
  ...pinger,
  send: (ping) => {
    if (ping.repeat !== true) tell(ping.body === '' ? ping.title : `${ping.title}. ${ping.body}`);
    const sent = pinger.send(ping);
    sending.add(sent);
    void sent.then(() => sending.delete(sent));
    return sent;
  },
});
