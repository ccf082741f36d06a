import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { expect, it, onTestFinished, vi } from 'vitest';
import { openForWriting, type FactStore } from '../../../src/persist/index.ts';
import { presentAsKeeper, presentAsScreen } from '../../../src/persist/presence/index.ts';
import { clockReading, systemClock } from '../../../src/shell/clock.ts';
import { factHead } from '../../../src/shell/head-facts.ts';
import { newId } from '../../../src/shell/ids.ts';
import { runKeeper, type KeeperEnd } from '../../../src/shell/keeper/run-keeper.ts';
import type { World } from '../../../src/shell/world.ts';

const clock = systemClock();

const worldIn = (folder: string): World => ({
  clock,
  newId,
  // No command is found here, so that nothing is shown on this machine.
  env: { PATH: folder },
  platform: 'linux',
  home: folder,
  cwd: folder,
  here: { zone: 'America/New_York', locale: 'en-GB' },
  packageFolder: folder,
  version: '0.0.0',
  interactive: false,
  print: () => undefined,
  printError: () => undefined,
});

/** A store in a folder of its own, without desktop pings. */
async function newStore() {
  const folder = mkdtempSync(join(tmpdir(), 'recoat-keeper-'));
  const opened = await openForWriting(folder, {
    clock: { now: clock.now, today: () => '2026-11-24' },
  });
  if (!opened.ok) throw new Error(opened.problem.says);
  const store = opened.value;
  onTestFinished(() => {
    store.close();
    rmSync(folder, { recursive: true });
  });
  store.changeSettings((settings) => ({ settings: { ...settings, desktop: false }, result: null }));
  return { folder, store };
}

/** An odd timer that is up so many milliseconds from now. */
function startTimer(store: FactStore, ms: number): void {
  const id = newId();
  const body = { timer: `${id}-t`, piece: null, label: 'clamps', ms };
  const fact = { ...factHead(id, clockReading(clock)), kind: 'timer-started' as const, body };
  const stored = store.change(() => ({ append: { bench: [fact] }, result: null }));
  if (!stored.ok) throw new Error(stored.problem.says);
}

function keeperIn(folder: string, stays = false) {
  const told: string[] = [];
  let end = (): void => undefined;
  const ended: Promise<KeeperEnd> = runKeeper({
    world: worldIn(folder),
    folder,
    stays,
    longestWait: 100,
    tell: (line) => told.push(line),
    untilTold: (how) => {
      end = how;
      return () => undefined;
    },
  });
  return { told, ended, end: () => end() };
}

const claimsIn = (store: FactStore): number => {
  const loaded = store.load();
  if (!loaded.ok) throw new Error(loaded.problem.says);
  return loaded.value.pings.filter(({ kind }) => kind === 'ping-claimed').length;
};

it('pings what falls due, writes down how it went, and ends when nothing is to come', async () => {
  const { folder, store } = await newStore();
  startTimer(store, 600);
  const keeper = keeperIn(folder);
  expect(await keeper.ended).toEqual({ because: 'nothing runs' });
  expect(keeper.told).toEqual([expect.stringMatching(/clamps, timer up since/)]);
  const loaded = store.load();
  if (!loaded.ok) throw new Error(loaded.problem.says);
  expect(loaded.value.pings.map(({ kind }) => kind)).toEqual(['ping-claimed', 'ping-sent']);
  expect(loaded.value.pings[1]?.body).toMatchObject({ ways: [], failures: [] });
  const log = readFileSync(join(folder, 'ping-diagnostics.log'), 'utf8');
  expect(log).toMatch(/began by=keeper.*\n(.*\n)*.*ended by=keeper/);
});

it('ends at once where nothing is to come, unless it is to stay', async () => {
  const { folder, store } = await newStore();
  expect(await keeperIn(folder).ended).toEqual({ because: 'nothing runs' });
  const staying = keeperIn(folder, true);
  const look = vi.fn();
  void staying.ended.then(look);
  startTimer(store, 400);
  await vi.waitFor(() => expect(staying.told).toHaveLength(1), { timeout: 5000 });
  expect(look).not.toHaveBeenCalled();
  staying.end();
  expect(await staying.ended).toEqual({ because: 'told to' });
});

it('writes down how a ping went that was on its way when it was told to end', async () => {
  const { folder, store } = await newStore();
  const go = join(folder, 'go');
  const untilThere = `const look = () => fs.existsSync(process.argv[1]) || setTimeout(look, 20); look();`;
  const hook = JSON.stringify([process.execPath, '-e', untilThere, go]);
  store.changeSettings((settings) => ({ settings: { ...settings, hook }, result: null }));
  startTimer(store, 100);
  const keeper = keeperIn(folder);
  await vi.waitFor(() => expect(keeper.told).toHaveLength(1), { timeout: 5000 });
  keeper.end();
  writeFileSync(go, '');
  expect(await keeper.ended).toEqual({ because: 'told to' });
  const loaded = store.load();
  if (!loaded.ok) throw new Error(loaded.problem.says);
  expect(loaded.value.pings[1]).toMatchObject({ kind: 'ping-sent', body: { ways: ['hook'] } });
});

it('stands aside while a screen is there, and pings once that has gone', async () => {
  const { folder, store } = await newStore();
  const screen = presentAsScreen(folder);
  startTimer(store, 300);
  const keeper = keeperIn(folder);
  await new Promise((resolve) => setTimeout(resolve, 900));
  expect(claimsIn(store)).toBe(0);
  screen?.leave();
  expect(await keeper.ended).toEqual({ because: 'nothing runs' });
  expect(keeper.told).toHaveLength(1);
  expect(claimsIn(store)).toBe(1);
});

it('leaves the watch to a keeper that is there already', async () => {
  const { folder, store } = await newStore();
  startTimer(store, 60_000);
  const other = presentAsKeeper(folder);
  expect(await keeperIn(folder).ended).toEqual({ because: 'another is there' });
  other?.leave();
});

it('says what keeps it from opening the store', async () => {
  const { folder, store } = await newStore();
  startTimer(store, 60_000);
  writeFileSync(join(folder, 'bench.json'), '{"recoat": 99, "facts": []}');
  expect(await keeperIn(folder).ended).toMatchObject({ because: 'store' });
});
