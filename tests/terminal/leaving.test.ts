import { spawn, spawnSync } from 'node:child_process';
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { setTimeout as wait } from 'node:timers/promises';
import { describe, expect, it, vi } from 'vitest';
import { exitCodes } from '../../src/commands/line/exit-codes.ts';
import {
  cleanEnvironment,
  keys,
  openTerminal,
  startFile,
  temporaryFolder,
  type OpenedTerminal,
} from './support/terminal.ts';

/** What a program must leave behind it: the main screen, and a cursor that shows. */
function expectRestored(terminal: OpenedTerminal): void {
  expect(terminal.isAlternateScreen()).toBe(false);
  expect(terminal.raw().lastIndexOf('\u001b[?25h')).toBeGreaterThan(
    terminal.raw().lastIndexOf('\u001b[?25l'),
  );
}

/** The demo once its store is open for writing, which brings listeners for signals of its own. */
async function busyScreen(): Promise<OpenedTerminal> {
  const terminal = openTerminal({ args: ['demo'] });
  await terminal.shows('Hall bench');
  await terminal.press('3', keys.enter);
  await terminal.shows('in hand  3 Hall bench');
  await terminal.settles();
  return terminal;
}

describe('leaving', () => {
  it('says first what will not ping while it is closed', async () => {
    const terminal = await busyScreen();
    await terminal.press('q');
    await terminal.shows('while recoat is closed');
    expect(terminal.screen()).toContain('2 Beech stool');
    await terminal.press(keys.escape);
    await terminal.shows('Hall bench');
    await wait(1000);
    await terminal.press('q');
    await terminal.shows('while recoat is closed');
    await wait(300);
    await terminal.press(keys.enter);
    expect((await terminal.ends()).code).toBe(0);
    expectRestored(terminal);
  });

  it('leaves at once by Ctrl+C, with the terminal as it was', async () => {
    const terminal = await busyScreen();
    await terminal.press(keys.controlC);
    expect((await terminal.ends()).code).toBe(0);
    expectRestored(terminal);
  });

  it.each([
    ['SIGTERM', 143, 15],
    ['SIGHUP', 129, 1],
  ] as const)('leaves by %s in good order', async (signal, code, number) => {
    const terminal = await busyScreen();
    terminal.kill(signal);
    const ended = await terminal.ends();
    expect(ended.signal === number || ended.code === code).toBe(true);
    expectRestored(terminal);
  });

  it('leaves in good order where its terminal is closed, and leaves a keeper for what was begun last', async () => {
    const folder = temporaryFolder();
    const run = (...words: readonly string[]) =>
      spawnSync(process.execPath, [startFile, ...words, '--folder', folder], {
        env: cleanEnvironment(),
        encoding: 'utf8',
      });
    run('add', 'Stool', '--schedule', 'bleach-and-clear');
    run('settings', 'keeper', 'yes');
    run('settings', 'desktop', 'false');
    // Somebody must hear it.
    run('settings', 'ping-hook', JSON.stringify([process.execPath, '-e', '0']));
    const terminal = openTerminal({ folder });
    await terminal.shows('Stool');
    await terminal.settles();
    expect(run('bench').stdout).not.toContain('A keeper stands by');
    run('timer', 'clamps', '30min');
    await terminal.shows('clamps');
    terminal.closes();
    await terminal.ends();
    const log = () => readFileSync(join(folder, 'ping-diagnostics.log'), 'utf8');
    expect(log()).toContain(`ended by=screen pid=${terminal.pid}`);
    const keeper = await vi.waitFor(
      () => {
        const [, pid] = /began by=keeper pid=(\d+)/.exec(log()) ?? [];
        if (pid === undefined) throw new Error('no keeper yet');
        return Number(pid);
      },
      { timeout: 15_000, interval: 100 },
    );
    process.kill(keeper, 'SIGKILL');
  });

  it('puts all away where it breaks down, says so and where, and keeps what was pressed', async () => {
    const folder = temporaryFolder();
    const run = (...words: readonly string[]) =>
      spawnSync(process.execPath, [startFile, ...words, '--folder', folder], {
        env: cleanEnvironment(),
        encoding: 'utf8',
      }).stdout;
    run('add', 'Stool', '--schedule', 'bleach-and-clear');
    const preload = import.meta.resolve('./support/break-down-preload.ts');
    const terminal = openTerminal({ folder, env: { NODE_OPTIONS: `--import ${preload}` } });
    await terminal.shows('Stool');
    await terminal.press(keys.enter);
    await terminal.shows('in hand  1 Stool');
    terminal.kill('SIGUSR2');
    expect((await terminal.ends()).code).toBe(exitCodes.broke);
    expectRestored(terminal);
    // Wherever the terminal broke the lines.
    expect(terminal.screen().replaceAll('\n', '')).toMatch(
      /recoat broke down, by a mistake of its own: made to failWhat was recorded is kept.* at .*break-down-preload/,
    );
    expect(run('bench')).toContain('In hand: 1 Stool');
  });

  it.each([0, 1, 2, 3, 5, 10])(
    'ends also when told to %i ms after its first frame, while its store is being opened',
    async (after) => {
      // Not the demo, whose store is open before its first frame.
      const terminal = openTerminal();
      await terminal.firstFrame();
      await wait(after);
      terminal.kill('SIGTERM');
      const ended = await terminal.ends();
      expect(ended.signal === 15 || ended.code === 143).toBe(true);
      expectRestored(terminal);
    },
  );

  it('stops by Ctrl+Z and comes back with its screen whole', async () => {
    const terminal = await busyScreen();
    await terminal.press('\u001a');
    await terminal.until('the main screen', () => !terminal.isAlternateScreen());
    process.kill(terminal.pid, 'SIGCONT');
    await terminal.until('the bench again', () => terminal.isAlternateScreen());
    await terminal.shows('in hand  3 Hall bench');
    await terminal.press('6');
    await terminal.shows('[6]');
  });
});

describe('without a terminal', () => {
  const run = (args: readonly string[], stdin: 'ignore' | 'pipe' = 'ignore') =>
    new Promise<{ code: number | null; out: string; error: string }>((resolve) => {
      const child = spawn(process.execPath, [startFile, ...args], {
        env: { ...cleanEnvironment(), RECOAT_FOLDER: temporaryFolder() },
        stdio: [stdin, 'pipe', 'pipe'],
      });
      let out = '';
      let error = '';
      child.stdout?.on('data', (chunk: Buffer) => (out += chunk.toString()));
      child.stderr?.on('data', (chunk: Buffer) => (error += chunk.toString()));
      child.on('close', (code) => resolve({ code, out, error }));
    });

  it('prints the bench and exits 0', async () => {
    const { code, out, error } = await run([]);
    expect(code).toBe(0);
    expect(error).toBe('');
    expect(out).toContain('Bench, ');
    expect(out).not.toContain('\u001b');
  });

  it('prints the demo too', async () => {
    const { code, out } = await run(['demo']);
    expect(code).toBe(0);
    expect(out).toContain('Wall shelf');
  });

  it('prints the bench where only standard input is no terminal', async () => {
    const { code, out } = await run([], 'pipe');
    expect(code).toBe(0);
    expect(out).toContain('Bench, ');
  });
});
