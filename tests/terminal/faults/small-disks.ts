import { execFileSync } from 'node:child_process';
import { cpSync, mkdirSync, mkdtempSync, rmSync } from 'node:fs';
import { join } from 'node:path';
import { setTimeout as wait } from 'node:timers/promises';
import { openStore } from '../../../src/persist/index.ts';
import { mountSmallDisk, type DiskKind, type SmallDisk } from '../../persist/small-disk.ts';
import { chance } from '../../tracker/support/chance.ts';
import { openBareTerminal } from './bare-terminal.ts';
import { chestInSections, confirmedSections, sectionsIn, type Ran } from './sections.ts';

export type DiskFault = 'fills up' | 'takes no new file any more' | 'can only be read';

export type DiskTrial = {
  readonly fault: DiskFault;
  readonly kind: DiskKind;
  readonly screens: number;
  readonly seed: number;
  /** So many screens at a time, each on a disk of its own. */
  readonly atOnce?: number;
  /** After each of them. */
  readonly told?: () => void;
};

export type DiskCount = {
  readonly screens: number;
  readonly confirmed: number;
  /** Screens that said that something was not stored. */
  readonly refused: number;
  /** Screens that kept what was pressed once the fault was over, and said nothing of it any more. */
  readonly recovered: number;
  readonly lost: number;
  readonly damaged: number;
};

const clock = { now: () => Date.now(), today: () => '2026-11-24' };
const betweenPresses = 250;
const pressesBefore = 4;
const pressesWhile = 4;
const pressesAfter = 3;
/** Two generations of the file and the day's backup take more. */
const mostLeft = 12_000;
const patience = 60_000;
/** A busy machine shows the last press late. */
const catchesUpWithin = 5000;
const bytesOf = { tmpfs: 1024 * 1024, ext4: 6 * 1024 * 1024 } as const;

/**
 * Presses a key on screens whose disk fails under them and comes back, kills them, and counts what they had confirmed that
 * is not in the store. Needs the right to mount.
 *
 * @param folder an empty one
 */
export async function pressOnFailingDisk(
  ran: Ran,
  folder: string,
  { fault, kind, screens, seed, atOnce = 1, told = () => undefined }: DiskTrial,
): Promise<DiskCount> {
  const pattern = join(folder, 'pattern');
  chestInSections(ran, pattern);
  const random = chance(seed);
  const count = { screens: 0, confirmed: 0, refused: 0, recovered: 0, lost: 0, damaged: 0 };
  const tryOne = async (isFirst: boolean): Promise<void> => {
    const at = mkdtempSync(join(folder, 'disk-'));
    const disk = mountSmallDisk(kind, at, bytesOf[kind]);
    try {
      const store = join(at, 'store');
      mkdirSync(store);
      cpSync(pattern, store, { recursive: true });
      if (fault === 'can only be read')
        execFileSync('mount', ['-o', 'remount,ro', at], { stdio: 'pipe' });
      // One of them has no room at all, whatever chance gives the others.
      const left = isFirst ? 0 : Math.floor(random() * mostLeft);
      const seen = await pressThrough(ran, store, faultOn(disk, store, fault, left));
      const opened = await openStore(store, { clock });
      const found = opened.ok ? sectionsIn(opened.value.bench) : 0;
      if (!opened.ok || opened.value.notices.length > 0) count.damaged += 1;
      if (seen.refused) count.refused += 1;
      if (seen.recovered) count.recovered += 1;
      count.confirmed += seen.confirmed;
      count.lost += Math.max(0, seen.confirmed - found);
    } finally {
      disk.unmount();
      rmSync(at, { recursive: true, force: true });
    }
  };
  const oneAfterAnother = async (): Promise<void> => {
    while (count.screens < screens) {
      count.screens += 1;
      await tryOne(count.screens === 1);
      told();
    }
  };
  await Promise.all(Array.from({ length: atOnce }, oneAfterAnother));
  return count;
}

type Fault = {
  readonly begin: () => void;
  readonly end: () => void;
  readonly comesBack: boolean;
};

function faultOn(disk: SmallDisk, store: string, fault: DiskFault, left: number): Fault {
  switch (fault) {
    case 'fills up':
      return {
        begin: () => disk.fillUpTo(left),
        end: disk.makeRoom,
        comesBack: true,
      };
    case 'takes no new file any more':
      return { begin: () => disk.refuse(store), end: () => disk.allow(store), comesBack: true };
    case 'can only be read':
      // So from the beginning: where a program writes already this can't be had.
      return { begin: () => undefined, end: () => undefined, comesBack: false };
  }
}

const saysNotStored = /Not (stored|recorded|opened)/;

async function pressThrough({ start, environment }: Ran, store: string, fault: Fault) {
  let confirmed = 0;
  let shows = false;
  let refused = false;
  const screen = openBareTerminal([start], environment(store), (lines) => {
    const shown = lines();
    if (shown.some((line) => saysNotStored.test(line))) refused = true;
    const sections = confirmedSections(shown);
    if (sections === null) return;
    shows = true;
    confirmed = Math.max(confirmed, sections);
  });
  const press = async (times: number): Promise<void> => {
    for (let each = 0; each < times; each++) {
      screen.write('s');
      await wait(betweenPresses);
    }
  };
  const began = Date.now();
  // A disk that can only be read may be refused before the first frame is looked at: that takes the place of the section.
  while (!shows && !refused) {
    if (Date.now() - began > patience || screen.hasEnded())
      throw new Error(`a screen shows no section:\n${screen.lines().join('\n')}`);
    await wait(20);
  }
  // What is loaded after the first frame opens the store.
  await wait(600);
  const until = async (isSo: () => boolean): Promise<void> => {
    const waits = Date.now();
    while (!isSo() && Date.now() - waits < catchesUpWithin) await wait(20);
  };
  await press(pressesBefore);
  const beforeFault = confirmed;
  fault.begin();
  await press(pressesWhile);
  await until(() => refused || confirmed > beforeFault);
  fault.end();
  const before = confirmed;
  await press(pressesAfter);
  const isWell = (): boolean =>
    confirmed > before && !screen.lines().some((line) => saysNotStored.test(line));
  if (fault.comesBack) await until(isWell);
  const recovered = isWell();
  screen.kill('SIGKILL');
  await screen.ended;
  return { confirmed, refused, recovered };
}
