import { execFileSync, spawnSync } from 'node:child_process';
import { existsSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it, onTestFinished, vi } from 'vitest';
import { cleanEnvironment, openTerminal, startFile, temporaryFolder } from './support/terminal.ts';

const run = (folder: string, ...words: readonly string[]) =>
  spawnSync(process.execPath, [startFile, ...words, '--folder', folder], {
    encoding: 'utf8',
    env: cleanEnvironment(),
  });

const markIn = (folder: string): number | null => {
  const path = join(folder, 'keeper.json');
  return existsSync(path) ? (JSON.parse(readFileSync(path, 'utf8')) as { pid: number }).pid : null;
};

/** The keeper that some test started must not outlive it. */
async function keeperIn(folder: string): Promise<number> {
  const pid = await vi.waitFor(
    () => {
      const found = markIn(folder);
      if (found === null) throw new Error('no keeper yet');
      return found;
    },
    { timeout: 15_000, interval: 100 },
  );
  onTestFinished(() => {
    try {
      process.kill(pid, 'SIGKILL');
    } catch {
      // It has ended already.
    }
  });
  return pid;
}

/** A shop with a timer of half an hour, without desktop pings, and with a hook that hears and does nothing. */
function shopWithTimer(): string {
  const folder = temporaryFolder();
  for (const words of [
    ['add', 'Stool', '--schedule', 'bleach-and-clear'],
    ['settings', 'desktop', 'false'],
    ['settings', 'ping-hook', JSON.stringify([process.execPath, '-e', '0'])],
    ['timer', 'clamps', '30min'],
  ])
    execFileSync(process.execPath, [startFile, ...words, '--folder', folder], {
      env: cleanEnvironment(),
    });
  return folder;
}

describe('the keeper', { timeout: 90_000 }, () => {
  it('is asked about once, outlives the terminal, and hands over to the next screen', async () => {
    const folder = shopWithTimer();
    const first = openTerminal({ folder });
    await first.shows('clamps');
    await first.press('q');
    await first.shows('Shall a keeper go on pinging');
    await first.press('y');
    expect((await first.ends()).code).toBe(0);
    const pid = await keeperIn(folder);
    expect(process.kill(pid, 0)).toBe(true);
    expect(run(folder, 'bench').stdout).toContain('A keeper stands by');

    const second = openTerminal({ folder });
    await second.shows('The keeper pinged till now. This screen has taken over.');
    await second.press('q');
    expect((await second.ends()).code).toBe(0);
    expect(second.raw()).not.toContain('Shall a keeper');
    expect(markIn(folder)).toBe(pid);

    process.kill(pid, 'SIGTERM');
    await vi.waitFor(() => expect(markIn(folder)).toBeNull(), { timeout: 10_000 });
  });

  it('stands by from the moment a window runs, so that a killed screen leaves somebody to ping', async () => {
    const folder = shopWithTimer();
    run(folder, 'settings', 'keeper', 'yes');
    const screen = openTerminal({ folder });
    await screen.shows('clamps');
    const pid = await keeperIn(folder);
    screen.kill('SIGKILL');
    await screen.ends();
    expect(process.kill(pid, 0)).toBe(true);
    expect(markIn(folder)).toBe(pid);
  });

  it('is missed by the next command and the next screen when it was killed', async () => {
    const folder = shopWithTimer();
    run(folder, 'settings', 'keeper', 'yes');
    const first = openTerminal({ folder });
    await first.shows('clamps');
    const pid = await keeperIn(folder);
    run(folder, 'settings', 'keeper', 'no');
    await first.press('q', '\r');
    await first.ends();
    process.kill(pid, 'SIGKILL');
    await vi.waitFor(() => expect(() => process.kill(pid, 0)).toThrow(), { timeout: 10_000 });
    expect(run(folder, 'bench').stderr).toContain('was ended from outside');
    const second = openTerminal({ folder });
    await second.shows('was ended from outside');
    expect(markIn(folder)).toBeNull();
  });

  it('is described to the supervisors of three systems, and installs nothing', () => {
    const folder = temporaryFolder();
    const unit = run(folder, 'keep', '--unit', 'systemd').stdout;
    expect(unit).toContain(`"keep" "--stay" "--folder" "${folder}"`);
    expect(run(folder, 'keep', '--unit', 'launchd').stdout).toContain(`<string>${folder}</string>`);
    expect(run(folder, 'keep', '--unit', 'windows').stdout).toContain('&quot;keep&quot;');
    expect(existsSync(folder)).toBe(false);
    const wrong = run(folder, 'keep', '--unit', 'sytemd');
    expect(wrong.status).not.toBe(0);
    expect(wrong.stderr).toContain('systemd');
  });
});
