import { spawn } from 'node:child_process';
import { render } from 'ink';
import { looksSynced, type FactStore, type OpenedStore } from '../persist/index.ts';
import type { TradeRules } from '../tracker/trade/index.ts';
import { createDesk } from '../views/desk.ts';
import { DeskView, type Suspending } from '../views/desk-view.tsx';
import type { BenchPort } from '../views/port.ts';
import { chooseTheme, type Theme } from '../views/theme/index.ts';
import { startBackground, type Background } from './background.ts';
import { mindKeeper, type KeeperMinding } from './keeper/mind-keeper.ts';
import { onBreakdown } from './broke-down.ts';
import { createAwake } from './ping/awake.ts';
import { createDiagnostics } from './ping/diagnostics.ts';
import { createPinger } from './ping/pinger.ts';
import { learnBeside } from './past/learn-beside.ts';
import { watchPortable } from './ping/portable.ts';
import { createPort } from './port.ts';
import { createSession, type Session } from './session.ts';
import { createTicker } from './ticker.ts';
import { tradeRulesOf } from './trade-rules.ts';
import type { World } from './world.ts';

export type ScreenOptions = {
  readonly world: World;
  /** The store as a command reads it; the part that writes is loaded after the first frame. */
  readonly opened: OpenedStore;
  /** A store that is open for writing already, for the demo. */
  readonly store?: FactStore;
  /** Runs the demo in place of this screen; offered while the bench is empty. */
  readonly demo?: () => Promise<number>;
};

/**
 * Runs the screens in the terminal until they are left.
 * @returns the exit code.
 */
export async function runScreen({
  world,
  opened,
  store: given,
  demo,
}: ScreenOptions): Promise<number> {
  const { clock, env, platform } = world;
  let store: FactStore | null = null;
  let code = 0;
  const after: { run: (() => Promise<number>) | null } = { run: null };
  const session = sessionOf(world, opened, await tradeRulesOf(world), () => store);
  const ticker = createTicker(clock);
  const theme = themeOf(session, env);
  const diagnostics = createDiagnostics({ folder: opened.folder });
  const awake = createAwake({ platform, env, spawn });
  const pinger = createPinger({
    settings: () => session.snapshot().settings,
    write: (bytes) => void process.stdout.write(bytes),
    platform,
    env,
    onNotice: session.say,
  });
  const leaveFor = (next: () => Promise<number>): void => {
    after.run = next;
    app.unmount();
  };
  const port: BenchPort = {
    ...createPort({ session, world, store: () => store, openDemo: demo && (() => leaveFor(demo)) }),
    acknowledge: (claims) => {
      session.acknowledge(claims);
      for (const claim of claims)
        diagnostics.record({ at: clock.now(), what: 'acknowledged', claim });
    },
  };
  const desk = createDesk({ port, ticks: ticker, theme, leave: () => app.unmount() });
  // Before the first frame, so that a key pressed meanwhile is not echoed into it. Ink takes it over, and gives it back.
  process.stdin.setRawMode(true);
  // Before Ink hears of it.
  const stopWiping = wipeWhenNarrower(process.stdout);
  let minding: KeeperMinding | null = null;
  const suspending = suspendingWith(() => minding);
  const app = render(<DeskView desk={desk} theme={theme} suspending={suspending} />, {
    alternateScreen: true,
    incrementalRendering: true,
    // At Ink's usual rate a key may wait 40 ms for its frame; ticks, not frames, set the idle cost.
    maxFps: 120,
    exitOnCtrlC: true,
    interactive: true,
  });

  let background: Background | null = null;
  let hasLeft = false;
  const begin = async (): Promise<void> => {
    await app.waitUntilRenderFlush();
    if (hasLeft) return;
    const around = { world, session, ticker, pinger, awake, diagnostics };
    // The invented shop ends with its screen.
    if (given === undefined) minding = mindKeeper(world, session, opened.folder);
    background = await startBackground({
      ...around,
      folder: opened.folder,
      given: given ?? null,
      opened: (open) => {
        store = open;
      },
      closing: watchPortable(platform),
      looked: (next) => minding?.looked(next),
    });
    // A screen that is killed days later would never write it.
    world.keepCompiledCode?.();
    await pinger.warmUp();
  };
  const begun = begin().catch((error: unknown) =>
    session.obstruct({
      says: `Not recorded: the store can't be opened (${error instanceof Error ? error.message : String(error)}).`,
      todo: 'Leave with q, and start again.',
    }),
  );
  let broke: { readonly thrown: unknown } | null = null;
  const stopListening = endBySignal((number) => {
    code = 128 + number;
    app.unmount();
  });
  // Put away in good order, so that what was pressed is on the disk and a keeper takes over.
  const stopMinding = onBreakdown((thrown) => {
    broke ??= { thrown };
    app.unmount();
  });

  try {
    await app.waitUntilExit();
  } finally {
    stopListening();
    port.lookBack?.end();
    stopWiping();
    hasLeft = true;
    // Left within the first moments, the store is just being opened: what it starts would keep the program alive.
    await begun;
    (background as Background | null)?.stop();
    ticker.stop();
    awake.want(null);
    session.flush();
    (store as FactStore | null)?.close();
    (minding as KeeperMinding | null)?.leave();
    stopMinding();
  }
  if (broke !== null) throw (broke as { readonly thrown: unknown }).thrown;
  const { obstacle } = session.snapshot();
  if (obstacle !== null) world.printError(`${obstacle.says} ${obstacle.todo}`);
  return after.run === null ? code : after.run();
}

const sessionOf = (
  world: World,
  opened: OpenedStore,
  rules: TradeRules,
  store: () => FactStore | null,
): Session =>
  createSession({
    loaded: opened,
    notices: [
      ...opened.notices.map(({ says, todo }) => `${says} ${todo}`),
      ...syncedWarning(opened.folder),
    ],
    folder: opened.folder,
    rules,
    store,
    clock: world.clock,
    newId: world.newId,
    here: world.here,
    // React has written the frame by the time an immediate runs.
    soon: (work) => setImmediate(work),
    learnBeside: learnBeside(),
  });

/** Two machines that write in one synced folder lose each other's work, whatever the lock says. */
const syncedWarning = (folder: string): readonly string[] =>
  looksSynced(folder)
    ? [
        `${folder} looks like a synced folder. Run recoat on one machine at a time there, or move it with --folder.`,
      ]
    : [];

/** The theme as chosen, worked out again only when a setting changes. */
function themeOf(session: Session, env: NodeJS.ProcessEnv): () => Theme {
  let chosen: { readonly settings: unknown; readonly theme: Theme } | null = null;
  return () => {
    const { settings } = session.snapshot();
    if (chosen?.settings !== settings) chosen = { settings, theme: chooseTheme(settings, env) };
    return chosen.theme;
  };
}

/** How Ctrl+Z and its signal stop this process and bring it back with the terminal as it was. */
const suspendingWith = (minding: () => KeeperMinding | null): Suspending => ({
  stop: async () => {
    minding()?.standsStill();
    process.kill(process.pid, 'SIGSTOP');
    await new Promise((resolve) => setTimeout(resolve, 0));
    minding()?.goesOn();
  },
  onSignal: (listener) => {
    process.on('SIGTSTP', listener);
    return () => process.off('SIGTSTP', listener);
  },
});

/**
 * A terminal that grows narrower may wrap the rows that stand there, so that they become more than Ink knows of and wipes:
 * all is wiped from here, and Ink draws it anew from the top.
 */
function wipeWhenNarrower(output: NodeJS.WriteStream): () => void {
  let { columns } = output;
  const resized = (): void => {
    if (output.columns < columns) output.write('\u001b[2J\u001b[H');
    columns = output.columns;
  };
  output.on('resize', resized);
  return () => output.off('resize', resized);
}

/**
 * Signals that end the program in good order, as does a terminal that is gone; what was pressed is on the disk before it
 * ends.
 */
function endBySignal(end: (number: number) => void): () => void {
  const signals = { SIGHUP: 1, SIGTERM: 15 } as const;
  // Reading and writing fail then, often before the signal comes and again while all is put away: these stay.
  for (const stream of [process.stdin, process.stdout])
    stream.on('error', () => end(signals.SIGHUP));
  const listeners = Object.entries(signals).map(([name, number]) => {
    const listener = (): void => end(number);
    process.once(name, listener);
    return () => process.off(name, listener);
  });
  return () => {
    for (const stop of listeners) stop();
  };
}
