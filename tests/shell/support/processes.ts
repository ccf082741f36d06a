import { memoryStore, type FactStore } from '../../../src/persist/index.ts';
import { startBackground, type Background } from '../../../src/shell/background.ts';
import { createSession } from '../../../src/shell/session.ts';
import { senseOf } from '../../../src/shell/shop.ts';
import type { World } from '../../../src/shell/world.ts';
import {
  foldBench,
  pingsOfBench,
  type Bench,
  type Intent,
  type PingFact,
} from '../../../src/tracker/bench/index.ts';
import { second, type Instant, type Milliseconds } from '../../../src/tracker/time/index.ts';
import { noRules } from '../../../src/tracker/trade/index.ts';
import { startOfTests, steppedClock } from './stepped-clock.ts';

export const processNames = ['screen A', 'screen B', 'keeper'] as const;
export type ProcessName = (typeof processNames)[number];

/** Where a process ends: between two looks, with a claim written and nothing sent, or sent and that not written. */
export type Death = 'at rest' | 'claimed' | 'sent';

export type Told = {
  readonly by: ProcessName;
  readonly at: Instant;
  readonly keys: readonly string[];
  readonly loud: boolean;
  readonly saysAgain: boolean;
  /** The store has taken note that it went out. */
  recorded: boolean;
};

type Process = {
  readonly name: ProcessName;
  readonly listeners: Set<() => void>;
  readonly background: Background;
  readonly session: ReturnType<typeof createSession>;
  wakeAt: Instant | null;
  wokeUp: Milliseconds;
  mustReload: boolean;
  isStopped: boolean;
  isDead: boolean;
  diesWhen: Death | null;
};

const here = { zone: 'America/New_York', locale: 'en-GB' };
const sense = senseOf({ zone: here.zone, hours: '24', temperature: 'C', lengths: 'mm' });
/** No process waits longer than this without looking. */
const longestWait = 15 * second;

const settle = async (): Promise<void> => {
  for (let turn = 0; turn < 4; turn++) await new Promise((resolve) => setImmediate(resolve));
};

/** Several processes on one store and one clock, which die, stop and start as told; and what a person would have heard. */
export function severalProcesses() {
  const clock = steppedClock(startOfTests);
  const store = memoryStore();
  const running = new Map<ProcessName, Process>();
  const told: Told[] = [];
  let ids = 0;
  const newId = (): string => `id${++ids}`;
  const world: World = {
    clock,
    newId,
    here,
    env: {},
    platform: 'linux',
    home: '',
    cwd: '',
    packageFolder: '',
    version: '0.0.0',
    interactive: false,
    print: () => undefined,
    printError: () => undefined,
  };
  const load = () => {
    const loaded = store.load();
    if (!loaded.ok) throw new Error(loaded.problem.says);
    return loaded.value;
  };

  const changed = (by: Process | null): void => {
    for (const each of running.values()) if (each !== by) each.mustReload = true;
  };

  /** The store as one process has it: it ends with the process, perhaps in the middle. */
  const storeOf = (process: () => Process): FactStore => ({
    ...store,
    change: (decide) => {
      const self = process();
      if (self.isDead)
        return {
          ok: false,
          problem: { kind: 'gone', file: '', says: 'Not stored: dead.', todo: '' },
        };
      let claims = false;
      const result = store.change((current) => {
        const decided = decide(current);
        claims = decided.append.pings?.some(({ kind }) => kind === 'ping-claimed') ?? false;
        return decided;
      });
      changed(self);
      if (claims && self.diesWhen === 'claimed') kill(self);
      return result;
    },
  });

  const kill = (process: Process): void => {
    process.isDead = true;
    process.listeners.clear();
    running.delete(process.name);
  };

  const isScreenThere = (): boolean => running.has('screen A') || running.has('screen B');

  const start = async (name: ProcessName): Promise<void> => {
    if (running.has(name)) return;
    const listeners = new Set<() => void>();
    let self: Process | null = null;
    const me = (): Process => {
      if (self === null) throw new Error('it has not begun');
      return self;
    };
    const own = storeOf(me);
    const session = createSession({
      rules: noRules,
      loaded: load(),
      notices: [],
      folder: null,
      store: () => own,
      clock,
      newId,
      here,
      soon: (work) => setImmediate(work),
    });
    const process = {
      name,
      listeners,
      session,
      wakeAt: null,
      wokeUp: clock.uptime() ?? 0,
      mustReload: false,
      isStopped: false,
      isDead: false,
      diesWhen: null,
    } as Omit<Process, 'background'> as Process;
    self = process;
    running.set(name, process);
    const background = await startBackground({
      world,
      session,
      ticker: {
        subscribe: (listener) => {
          listeners.add(listener);
          return () => listeners.delete(listener);
        },
        wakeAt: (instant) => {
          process.wakeAt = instant;
        },
      },
      pinger: {
        send: async (ping) => {
          if (process.isDead) return new Promise(() => undefined);
          if (ping.repeat === true) return { ways: ['bell'], failures: [] };
          const claim = load().pings.find(({ id }) => id === ping.id);
          const keys = claim?.kind === 'ping-claimed' ? claim.body.pings : [];
          const one: Told = {
            by: name,
            at: clock.now(),
            keys,
            loud: ping.loud,
            saysAgain: `${ping.title} ${ping.body}`.includes('Perhaps told before.'),
            recorded: false,
          };
          told.push(one);
          if (process.diesWhen === 'sent') {
            kill(process);
            return new Promise(() => undefined);
          }
          one.recorded = true;
          return { ways: ['bell'], failures: [] };
        },
        warmUp: () => Promise.resolve(),
      },
      awake: { want: () => undefined, state: () => ({ wanted: false, kept: false, why: '' }) },
      diagnostics: { record: () => undefined, missed: () => 0 },
      folder: '',
      given: own,
      opened: () => undefined,
      by: name === 'keeper' ? 'keeper' : 'screen',
      ...(name === 'keeper' ? { standsAside: isScreenThere } : {}),
    });
    Object.assign(process, { background });
    await settle();
  };

  const upNow = (): Milliseconds => clock.uptime() ?? 0;
  const able = (): readonly Process[] => [...running.values()].filter((each) => !each.isStopped);

  /** One second goes by: whoever is to look looks. */
  const passSecond = async (): Promise<void> => {
    clock.pass(second);
    for (const process of able()) {
      if (process.mustReload) {
        process.mustReload = false;
        process.session.reload();
      }
      const isDue = process.wakeAt !== null && process.wakeAt <= clock.now();
      if (!isDue && upNow() - process.wokeUp < longestWait) continue;
      process.wokeUp = upNow();
      if (isDue) process.wakeAt = null;
      if (process.name === 'keeper') process.session.reload();
      for (const listener of process.listeners) listener();
    }
    await settle();
  };

  const bench = (): Bench =>
    foldBench(load().bench, undefined, {
      told: clock.now(),
      uptimeMs: clock.uptime(),
      bootId: clock.bootId,
    });

  return {
    clock,
    told,
    start,
    second: passSecond,
    able: (): boolean => able().length > 0,
    isThere: (name: ProcessName): boolean => running.has(name),
    die: (name: ProcessName, when: Death): void => {
      const process = running.get(name);
      if (process === undefined) return;
      if (when === 'at rest') kill(process);
      else process.diesWhen = when;
    },
    /** Whoever was to die at its next claim lives on. */
    letLive: (): void => {
      for (const process of running.values()) process.diesWhen = null;
    },
    stop: (name: ProcessName): void => {
      const process = running.get(name);
      if (process !== undefined) process.isStopped = true;
    },
    goOn: (name: ProcessName): void => {
      const process = running.get(name);
      if (process !== undefined) process.isStopped = false;
    },
    /** What a command does: it is there for a moment only. */
    act: (intent: Intent): void => {
      const session = createSession({
        rules: noRules,
        loaded: load(),
        notices: [],
        folder: null,
        store: () => store,
        clock,
        newId,
        here,
        soon: (work) => work(),
      });
      session.act(intent);
      changed(null);
    },
    pieceIds: (): readonly string[] => [...bench().pieces.keys()],
    /** Of every window the last ping that has fallen due. */
    lastDue: (): readonly string[] => {
      const last = new Map<string, string>();
      for (const { key, at } of pingsOfBench(bench(), clock.now(), sense))
        if (at <= clock.now()) last.set(key.slice(0, key.lastIndexOf('/')), key);
      return [...last.values()];
    },
    pings: (): readonly PingFact[] => load().pings,
  };
}
