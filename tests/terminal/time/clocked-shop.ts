import { spawn, spawnSync, type ChildProcess } from 'node:child_process';
import { once } from 'node:events';
import { chmodSync, existsSync, mkdirSync, readFileSync, rmSync } from 'node:fs';
import { renameSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { setTimeout as wait } from 'node:timers/promises';
import type { PingsJson } from '../../../src/commands/json-shapes/index.ts';
import { openBareTerminal, type BareTerminal } from '../faults/bare-terminal.ts';
import type { Ran } from '../faults/sections.ts';
import { createMovedClock, type MovedClock } from '../support/moved-clock.ts';

/** Invented: a dwell that spoils, and a coat that only costs work. */
const schedules = {
  wet: `id: wet
name: Wet
summary: a dwell, for tests of time
sources: {made: invented}
source: made
steps:
  - id: bleach
    name: 'A, then B'
    class: bleach
    minutes: {typical: 30, low: 20, high: 50}
    driver: area
    setup: 5
    stamps: [first stroke of A, first stroke of B]
    windows:
      b-on:
        kind: chemical
        do: B on
        starts at: first stroke of A
        opens: 5 min
        closes: 15 min
        then: 'A dry: start over'
        loss: spoils
        ended by: first stroke of B
`,
  coated: `id: coated
name: Coated
summary: a coat, for tests of time
sources: {made: invented}
source: made
steps:
  - id: coat
    name: coat 1
    class: coat, brushed
    minutes: {typical: 30, low: 20, high: 50}
    driver: area
    setup: 5
    stamps: [first stroke]
    windows:
      scuff:
        kind: coat
        do: scuff
        milestone: scuff
        starts at: first stroke
        opens: 1 h
        closes: 4 h
        then: scuff 320 first
        loss: costs work
        ended by: needing step
  - id: scuff
    name: scuff
    class: scuff
    minutes: {typical: 30, low: 20, high: 50}
    driver: area
    setup: 5
    needs: [scuff]
`,
} as const;

export type Heard = {
  readonly ping: string;
  readonly title: string;
  readonly body: string;
  readonly loud: boolean;
};

/** What a hook does to a process, before or after it has passed the ping on: once, then no more. */
export type HookDeed = `${'kill' | 'stop'} ${'before' | 'after'}`;

/** A real shop: the built program in processes of its own, a clock that is moved, and a hook that writes down pings. */
export type ClockedShop = {
  readonly folder: string;
  readonly clock: MovedClock;
  /** Runs a command to its end; throws where it fails. */
  readonly run: (...words: readonly string[]) => string;
  readonly tries: (...words: readonly string[]) => {
    readonly code: number | null;
    readonly out: string;
    readonly error: string;
  };
  readonly screen: () => BareTerminal;
  readonly keeper: () => ChildProcess;
  readonly heard: () => readonly Heard[];
  readonly onRecord: () => PingsJson['sent'];
  readonly hookIsTo: (deed: HookDeed, pid: number) => void;
  /** Whether the hook does what it was told, or has done so. */
  readonly hookHasDone: () => boolean;
  /** Time goes by in steps that nobody takes for a sleep; after each, everybody looks. */
  readonly passes: (ms: number) => Promise<void>;
  /** Resolves once all that it started has ended. */
  readonly remove: () => Promise<void>;
};

/** Shorter than what counts as having stood still. */
const step = 10_000;

/**
 * @param folder an empty one
 * @param startAt what the clock shows to begin with; the real time where it is left out
 */
export function openClockedShop(
  { start, environment }: Ran,
  folder: string,
  { startAt, env: around = {} }: { startAt?: string; env?: Readonly<Record<string, string>> } = {},
): ClockedShop {
  const store = join(folder, 'store');
  const clock = createMovedClock(startAt);
  const env = { ...environment(store), ...around, ...clock.env };
  const started: {
    readonly kill: (signal: 'SIGKILL') => unknown;
    readonly ended: Promise<unknown>;
  }[] = [];
  const tries: ClockedShop['tries'] = (...words) => {
    const { status, stdout, stderr } = spawnSync(process.execPath, [start, ...words], {
      env,
      encoding: 'utf8',
    });
    return { code: status, out: stdout, error: stderr };
  };
  const run = (...words: readonly string[]): string => {
    const { code, out, error } = tries(...words);
    if (code !== 0) throw new Error(`${words.join(' ')} ended with ${code}: ${error}`);
    return out;
  };
  mkdirSync(join(store, 'schedules'), { recursive: true });
  for (const [name, text] of Object.entries(schedules))
    writeFileSync(join(store, 'schedules', `${name}.yaml`), text);
  const hook = join(folder, 'hook.sh');
  const deed = join(folder, 'deed');
  const heard = join(folder, 'heard');
  writeFileSync(hook, hookText({ deed, heard }));
  chmodSync(hook, 0o755);
  const settings = { desktop: 'false', awake: 'false', keeper: 'no', 'ping-hook': hook };
  for (const [name, value] of Object.entries(settings)) run('settings', name, value);
  return {
    folder: store,
    clock,
    run,
    tries,
    screen: () => {
      const screen = openBareTerminal([start], env);
      started.push(screen);
      return screen;
    },
    keeper: () => {
      const keeper = spawn(process.execPath, [start, 'keep'], { env, stdio: 'ignore' });
      started.push({ kill: (signal) => keeper.kill(signal), ended: once(keeper, 'exit') });
      return keeper;
    },
    heard: () =>
      existsSync(heard)
        ? readFileSync(heard, 'utf8')
            .split('\n')
            .filter((line) => line !== '')
            .map((line) => JSON.parse(line) as Heard)
        : [],
    onRecord: () => (JSON.parse(run('pings', '--json')) as PingsJson).sent,
    hookIsTo: (told, pid) => {
      rmSync(`${deed}.done`, { force: true });
      writeFileSync(`${deed}.new`, `${told.toUpperCase()} ${pid}\n`);
      renameSync(`${deed}.new`, deed);
    },
    hookHasDone: () => existsSync(`${deed}.done`),
    passes: async (ms) => {
      for (let left = ms; left > 0; left -= step) {
        clock.sleep(Math.min(step, left));
        // A change of the store makes everybody look at once, as a timer would have if the time had really gone by.
        run('conditions', String(15 + (Math.round(left / step) % 10)), '50');
        await wait(300);
      }
    },
    remove: async () => {
      for (const each of started) each.kill('SIGKILL');
      await Promise.all(started.map(({ ended }) => ended));
      clock.remove();
    },
  };
}

const hookText = ({ deed, heard }: { deed: string; heard: string }): string => `#!/bin/sh
# A terminal that closes takes along what runs in it.
trap '' HUP
line=$(cat)
signal=none when=never pid=0
if mv '${deed}' '${deed}.mine' 2>/dev/null; then read -r signal when pid < '${deed}.mine'; fi
act() {
  if [ "$when" = "$1" ]; then
    touch '${deed}.done'
    kill -s "$signal" "$pid"
  fi
}
act BEFORE
if [ "$when" = BEFORE ]; then exit 1; fi
printf '%s\\n' "$line" >> '${heard}'
act AFTER
`;
