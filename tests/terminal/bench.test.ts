import { spawnSync } from 'node:child_process';
import { setTimeout as wait } from 'node:timers/promises';
import { describe, expect, it } from 'vitest';
import {
  cleanEnvironment,
  keys,
  openTerminal,
  startFile,
  temporaryFolder,
  type OpenedTerminal,
} from './support/terminal.ts';

/** Adds a piece with the schedule of that number in the list. */
async function addPiece(terminal: OpenedTerminal, name: string, schedule: string): Promise<void> {
  await terminal.press('a');
  await terminal.shows('add a piece, 1 of 2');
  await terminal.type(name);
  await terminal.press(keys.enter);
  await terminal.shows(`add a piece, 2 of 2: ${name}`);
  await terminal.shows('Bleach and clear');
  await terminal.press(schedule);
  await terminal.shows(`${name} on the bench`);
  // For a second after a list has closed the bench takes no key for its own.
  await wait(1000);
}

describe('the bench in a real terminal', () => {
  it('says in three lines what to do when it is empty', async () => {
    const terminal = openTerminal();
    await terminal.shows('The bench is empty.');
    expect(terminal.isAlternateScreen()).toBe(true);
    expect(terminal.screen()).toContain('Add a piece: a name and a finishing schedule will do.');
  });

  it('adds a piece, picks it up, and remembers both after being killed', async () => {
    const terminal = openTerminal();
    await terminal.shows('The bench is empty.');
    await addPiece(terminal, 'Oak settle', '5');
    await terminal.press(keys.enter);
    await terminal.shows('in hand since');
    await terminal.settles();
    terminal.kill('SIGKILL');
    await terminal.ends();
    const again = openTerminal({ folder: terminal.folder });
    await again.shows('in hand since');
    expect(again.screen()).toContain('[1] Oak settle');
  });

  it('runs windows side by side, switches between pieces, and takes back', async () => {
    const terminal = openTerminal({ args: ['demo'] });
    await terminal.shows('working, B on');
    expect(terminal.screen()).toContain('drying, try it');
    expect(terminal.screen()).toContain('in clamps till');
    expect(terminal.screen()).toContain('keep off till');
    await terminal.press('3', keys.enter);
    await terminal.shows('in hand  3 Hall bench');
    await terminal.press('b');
    await terminal.shows('in hand  1 Wall shelf');
    await wait(300);
    await terminal.press('0');
    await terminal.shows('taken back: pick up');
    await terminal.shows('in hand  3 Hall bench');
    await terminal.press('g');
    await terminal.shows('in hand  1 Wall shelf');
  });

  it('takes nothing from a leaning glove', async () => {
    const terminal = openTerminal({ args: ['demo'] });
    await terminal.shows('Hall bench');
    await terminal.press('6');
    await terminal.shows('[6]');
    await wait(400);
    // A held key: a first press, then repeats every 33 ms as keyboards do.
    for (let repeat = 0; repeat < 30; repeat += 1) {
      terminal.write(keys.enter);
      await wait(33);
    }
    await terminal.shows('in hand  6 Cane rocker');
    await wait(500);
    terminal.write('ddd   ');
    await wait(400);
    expect(terminal.screen()).toMatch(/look over, photos, tag, 1 of \d+/);
    expect(terminal.screen()).toContain('in hand  6 Cane rocker');
  });

  it('shows actual against estimated minutes', async () => {
    const terminal = openTerminal({ args: ['demo'] });
    await terminal.shows('Beech stool');
    await terminal.press('2', 'm');
    await terminal.shows('hours: 2 Beech stool');
    expect(terminal.screen()).toContain('done so far');
    await terminal.press(keys.tab);
    await terminal.shows('14 finished pieces');
    expect(terminal.screen()).toMatch(/range held \d+ of \d+ times/);
  });

  it('opens the demo from the empty bench', async () => {
    const terminal = openTerminal();
    await terminal.shows('open the demo');
    await terminal.press(keys.down, keys.enter);
    await terminal.shows('Wall shelf');
  });
});

describe('pings', () => {
  it('rings and turns two rows over when a dwell is to be followed; any key only silences and selects', async () => {
    const folder = temporaryFolder();
    const told = (...words: readonly string[]): void => {
      const { status, stderr } = spawnSync(
        process.execPath,
        [startFile, ...words, '--folder', folder],
        { encoding: 'utf8', env: cleanEnvironment() },
      );
      expect(status, stderr).toBe(0);
    };
    told('add', 'Wall shelf', '--schedule', 'bleach-and-clear');
    told('add', 'Beech stool', '--schedule', 'glue-up-repair');
    const terminal = openTerminal({ folder });
    await terminal.shows('Beech stool');
    await terminal.settles();
    // B goes on 10 minutes after A: in less than half a minute.
    told('pick-up', '1', '--step', 'bleach', '--anyway', 'tried before', '--ago', '12min');
    told('first-stroke', '1', '--ago', '9.6min');
    await terminal.shows('working, B on');
    // The first of them may do no more than silence the ping that a minute is left.
    await terminal.press('2', '2');
    await terminal.shows('[2]');
    await terminal.until(
      'a loud ping',
      () => terminal.screen().includes('!! 1 Wall shelf: B on'),
      40_000,
    );
    expect(terminal.raw()).toContain('\u0007');
    await wait(400);
    await terminal.press('d');
    await terminal.shows('silenced, press again');
    await terminal.shows('[1]');
    expect(terminal.screen()).not.toContain('!! 1');
    await terminal.press(keys.space);
    await terminal.shows('Space: bleach A, then B while A is wet done');
  });
});

describe('sizes', () => {
  it('fits 40 columns and 120, and comes back whole after being too small', async () => {
    const terminal = openTerminal({ args: ['demo'] });
    await terminal.shows('Wall shelf');
    await terminal.settles();
    const rowOfShelf = (): string =>
      terminal.lines().find((line) => line.includes('Wall shelf     working')) ?? '';
    const at80 = rowOfShelf();
    await terminal.resize(40, 20);
    await terminal.shows('[1]');
    expect(terminal.screen()).toMatch(/^▶\[1\] Wall shelf {5}│/m);
    await terminal.resize(20, 6);
    await terminal.shows('Make it larger');
    await terminal.resize(120, 36);
    await terminal.shows('so far');
    await terminal.resize(80, 24);
    await terminal.settles();
    // All but the seconds is as it was.
    expect(rowOfShelf().slice(0, 40)).toBe(at80.slice(0, 40));
    expect(terminal.lines()[23]).toContain('1-9 piece');
  });
});
