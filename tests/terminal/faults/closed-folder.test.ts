import { spawnSync } from 'node:child_process';
import { join } from 'node:path';
import { setTimeout as wait } from 'node:timers/promises';
import { describe, expect, it } from 'vitest';
import type { BenchJson } from '../../../src/commands/json-shapes/index.ts';
import { mountingFails, newDisk } from '../../persist/mounted.ts';
import { closableFolder, closingFails } from '../support/closable-folder.ts';
import { cleanEnvironment, keys, openTerminal, startFile } from '../support/terminal.ts';

/** The program on that folder, as commands and as a screen, with a chair in its first step. */
function shopIn(folder: string) {
  const run = (...words: readonly string[]) =>
    spawnSync(process.execPath, [startFile, ...words, '--folder', folder], {
      encoding: 'utf8',
      env: cleanEnvironment(),
    });
  run('add', 'Chair', '--schedule', 'glue-up-repair');
  run('settings', 'desktop', 'no');
  /** On record, as a command reads it. */
  const inHand = () =>
    (JSON.parse(run('bench', '--json').stdout) as BenchJson).rows.filter(
      ({ inHandSince }) => inHandSince !== null,
    ).length;
  return { run, inHand };
}

/** Enter counts once a second. */
const enterCountsAgain = 1100;
const notStored = /Not stored: /;
const skipping = closingFails === null ? '' : ` (skipped: ${closingFails})`;

describe.skipIf(closingFails !== null)(`a folder that can not be written${skipping}`, () => {
  it('is said when a key is pressed, undoes it, and is forgotten once it can be written', async () => {
    const { folder, close, open } = closableFolder();
    const { run, inHand } = shopIn(folder);
    const screen = openTerminal({ folder });
    await screen.press(keys.enter);
    await screen.until('the chair in hand', () => /in hand {2}1 Chair/.test(screen.screen()));
    close();
    await wait(enterCountsAgain);
    await screen.press(keys.enter);
    await screen.until(
      'the refusal, and the chair in hand again',
      () => notStored.test(screen.screen()) && /in hand {2}1 Chair/.test(screen.screen()),
    );
    expect(screen.screen()).not.toMatch(/put down 1 Chair/);
    expect(run('put-down', '1')).toMatchObject({ status: 3, stdout: '' });
    expect(inHand()).toBe(1);
    // What asks for a word more says it too, and claims nothing.
    await screen.press('c');
    await screen.type('17C 58%');
    await screen.press(keys.enter);
    await screen.until('the refusal of the air', () => notStored.test(screen.screen()));
    expect(screen.screen()).not.toContain('conditions noted');
    await screen.press(keys.escape);
    open();
    await wait(enterCountsAgain);
    await screen.press(keys.enter);
    await screen.until('no refusal', () => !notStored.test(screen.screen()));
    expect(inHand()).toBe(0);
  });

  it('keeps a screen that began on it from recording till it can be written', async () => {
    const { folder, close, open } = closableFolder();
    const { inHand } = shopIn(folder);
    close();
    const screen = openTerminal({ folder });
    await screen.until('why', () => screen.screen().includes('Not opened for work'));
    await screen.press(keys.enter);
    expect(screen.screen()).toContain('Not opened for work');
    expect(inHand()).toBe(0);
    open();
    await screen.until('that it is open', () => /The store is open now/.test(screen.screen()));
    await screen.press(keys.enter);
    await screen.until('the chair in hand', () => /in hand {2}1 Chair/.test(screen.screen()));
    expect(inHand()).toBe(1);
  });

  it('is named by a keeper that can not begin on it', () => {
    const { folder, close } = closableFolder();
    const { run } = shopIn(folder);
    close();
    const kept = run('keep');
    expect(kept.status).toBe(3);
    expect(kept.stderr).toContain(`Not begun: ${folder} can't be written`);
  });
});

describe.skipIf(mountingFails !== null)(
  `a disk that is full${mountingFails === null ? '' : ` (skipped: ${mountingFails})`}`,
  () => {
    it('is said when a key is pressed, and forgotten once there is room', async () => {
      const disk = newDisk(1024 * 1024);
      const folder = join(disk.folder, 'store');
      const { inHand } = shopIn(folder);
      const screen = openTerminal({ folder });
      await screen.settles();
      disk.fillUpTo(0);
      await screen.press(keys.enter);
      await screen.until(
        'the refusal, and no chair in hand',
        () =>
          screen.screen().includes('there is no room left') &&
          !/in hand {2}1 Chair/.test(screen.screen()),
      );
      expect(inHand()).toBe(0);
      disk.makeRoom();
      await wait(enterCountsAgain);
      await screen.press(keys.enter);
      await screen.until('the chair in hand', () => /in hand {2}1 Chair/.test(screen.screen()));
      expect(screen.screen()).not.toContain('Not stored');
      expect(inHand()).toBe(1);
    });
  },
);
