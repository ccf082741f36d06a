import { spawn, spawnSync } from 'node:child_process';
import { chmodSync, existsSync, mkdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { setTimeout as wait } from 'node:timers/promises';
import { expect, it, onTestFinished } from 'vitest';
import type { PingsJson } from '../../../src/commands/json-shapes/index.ts';
import { cleanEnvironment, openTerminal, startFile, temporaryFolder } from '../support/terminal.ts';

/** A shop whose pings are written to a file by a hook, one line each. */
function shopWithHook() {
  const folder = temporaryFolder();
  const run = (...words: readonly string[]) =>
    spawnSync(process.execPath, [startFile, ...words, '--folder', folder], {
      encoding: 'utf8',
      env: cleanEnvironment(),
    });
  run('add', 'Chest', '--schedule', 'glue-up-repair');
  run('settings', 'desktop', 'false');
  run('settings', 'keeper', 'no');
  const hook = join(folder, 'hook.sh');
  const heard = join(folder, 'heard');
  mkdirSync(folder, { recursive: true });
  writeFileSync(hook, `#!/bin/sh\ncat >> '${heard}'\n`);
  chmodSync(hook, 0o755);
  const set = run('settings', 'ping-hook', hook);
  if (set.status !== 0) throw new Error(set.stderr);
  const keep = () => {
    const keeper = spawn(process.execPath, [startFile, 'keep', '--folder', folder], {
      env: cleanEnvironment(),
      stdio: 'ignore',
    });
    onTestFinished(() => void keeper.kill('SIGKILL'));
    return keeper;
  };
  return {
    folder,
    run,
    keep,
    heard: (): readonly string[] =>
      existsSync(heard)
        ? readFileSync(heard, 'utf8')
            .trim()
            .split('\n')
            .map((line) => {
              const { title, body } = JSON.parse(line) as { title: string; body: string };
              return `${title}. ${body}`;
            })
        : [],
    onRecord: () => (JSON.parse(run('pings', '--json').stdout) as PingsJson).sent,
  };
}

it(
  'goes out once from two screens and a keeper, and once from the keeper when both are killed just before',
  { timeout: 120_000 },
  async () => {
    const shop = shopWithHook();
    const screens = [openTerminal({ folder: shop.folder }), openTerminal({ folder: shop.folder })];
    for (const screen of screens) await screen.settles();
    const first = expect.stringContaining('first') as string;
    const second = expect.stringContaining('second') as string;
    const seconds = (count: number): string => `${count / 60}min`;
    shop.keep();
    const began = Date.now();
    const till = (since: number): Promise<void> => wait(began + since - Date.now());
    // Further apart than what goes out together.
    shop.run('timer', 'first', seconds(12));
    shop.run('timer', 'second', seconds(60));
    await till(24_000);
    expect(shop.heard()).toEqual([first]);
    expect(shop.onRecord()).toHaveLength(1);
    await till(54_000);
    for (const screen of screens) {
      screen.kill('SIGKILL');
      await screen.ends();
    }
    // A claim of which nothing more is heard for half a minute is told again: the first one's would be by then.
    await till(68_000);
    expect(shop.heard()).toEqual([first, second]);
    expect(shop.onRecord().map(({ ways }) => ways)).toEqual([['screen', 'bell', 'hook'], ['hook']]);
  },
);
