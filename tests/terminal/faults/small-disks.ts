import { execFileSync } from 'node:child_process';
import { cpSync, mkdirSync, mkdtempSync, rmSync, statfsSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { setTimeout as wait } from 'node:timers/promises';
import { openStore } from '../../../src/persist/index.ts';
import { chance } from '../../tracker/support/chance.ts';
import { openBareTerminal } from './bare-terminal.ts';
import { chestInSections, confirmedSections, sectionsIn, type Ran } from './sections.ts';

export type DiskFault = 'fills up' | 'can only be read';

export type DiskCount = {
  readonly screens: number;
  readonly confirmed: number;
  /** Screens that said that something was not stored. */
  readonly refused: number;
  readonly lost: number;
  readonly damaged: number;
};

const clock = { now: () => Date.now(), today: () => '2026-11-24' };
const betweenPresses = 250;
const presses = 8;
/** Two generations of the file and the day's backup take more. */
const mostLeft = 12_000;
const patience = 20_000;

/**
 * Presses a key on screens whose disk fills up to some odd number of bytes, or can only be read, kills them, and counts what they had confirmed that is not in the store. Needs the right to mount.
 *
 * @param folder an empty one
 */
export async function pressOnFailingDisk(
  ran: Ran,
  folder: string,
  { fault, screens, seed }: { fault: DiskFault; screens: number; seed: number },
): Promise<DiskCount> {
  const pattern = join(folder, 'pattern');
  chestInSections(ran, pattern);
  const random = chance(seed);
  const count = { screens, confirmed: 0, refused: 0, lost: 0, damaged: 0 };
  for (let each = 0; each < screens; each++) {
    const disk = mkdtempSync(join(folder, 'disk-'));
    execFileSync('mount', ['-t', 'tmpfs', '-o', 'size=1m', 'tmpfs', disk], { stdio: 'pipe' });
    try {
      const store = join(disk, 'store');
      mkdirSync(store);
      cpSync(pattern, store, { recursive: true });
      // A disk on which a program writes can't be made read-only, so that one is so from the beginning.
      if (fault === 'can only be read')
        execFileSync('mount', ['-o', 'remount,ro', disk], { stdio: 'pipe' });
      const spoil = (): void => {
        if (fault === 'fills up') fillUpTo(disk, Math.floor(random() * mostLeft));
      };
      const seen = await pressThrough(ran, store, spoil);
      const opened = await openStore(store, { clock });
      const found = opened.ok ? sectionsIn(opened.value.bench) : 0;
      if (!opened.ok || opened.value.notices.length > 0) count.damaged += 1;
      if (seen.refused) count.refused += 1;
      count.confirmed += seen.confirmed;
      count.lost += Math.max(0, seen.confirmed - found);
    } finally {
      execFileSync('umount', ['--lazy', disk], { stdio: 'pipe' });
      rmSync(disk, { recursive: true, force: true });
    }
  }
  return count;
}

async function pressThrough({ start, environment }: Ran, store: string, spoil: () => void) {
  let confirmed = 0;
  let shows = false;
  let refused = false;
  const screen = openBareTerminal([start], environment(store), (lines) => {
    const shown = lines();
    if (shown.some((line) => /Not (stored|recorded|opened)/.test(line))) refused = true;
    const sections = confirmedSections(shown);
    if (sections === null) return;
    shows = true;
    confirmed = Math.max(confirmed, sections);
  });
  const began = Date.now();
  while (!shows) {
    if (Date.now() - began > patience || screen.hasEnded())
      throw new Error(`a screen shows no section:\n${screen.lines().join('\n')}`);
    await wait(20);
  }
  // What is loaded after the first frame opens the store.
  await wait(600);
  for (let press = 0; press < presses; press++) {
    if (press === presses / 2) spoil();
    screen.write('s');
    await wait(betweenPresses);
  }
  screen.kill('SIGKILL');
  await screen.ended;
  return { confirmed, refused };
}

function fillUpTo(disk: string, left: number): void {
  const { bavail, bsize } = statfsSync(disk);
  writeFileSync(join(disk, 'other things'), Buffer.alloc(Math.max(0, bavail * bsize - left)));
}
