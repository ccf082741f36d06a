import { cpSync, mkdtempSync, rmSync } from 'node:fs';
import { join } from 'node:path';
import { setTimeout as wait } from 'node:timers/promises';
import { openStore } from '../../../src/persist/index.ts';
import { chance } from '../../tracker/support/chance.ts';
import { openBareTerminal } from './bare-terminal.ts';
import { chestInSections, confirmedSections, sectionsIn, type Ran } from './sections.ts';

export type ScreenKills = {
  readonly kills: number;
  /** Presses that the screens had confirmed before they were killed. */
  readonly confirmed: number;
  /** Of those, how many were not in the store afterwards. */
  readonly lost: number;
  /** Openings that failed, or found something to mend. */
  readonly damaged: number;
};

/** Presses that come closer count as a held key. */
const betweenPresses = 200;
/** A screen that shows nothing in this time is a fault of its own. */
const patience = 60_000;
/** A screen is killed at some instant of this time after its first press. */
const killedWithin = 900;
/** So many screens die on one store, one after another, before the next is begun. */
const killsOfStore = 25;

const clock = { now: () => Date.now(), today: () => '2026-11-24' };

/**
 * Kills screens with SIGKILL at instants nobody chose while a key is pressed, and counts what was confirmed on them
 * that is not in the store.
 *
 * @param folder an empty one
 * @param atOnce so many at a time, each on a store of its own
 */
export async function killScreens(
  ran: Ran,
  folder: string,
  {
    kills,
    atOnce,
    seed,
    told = () => undefined,
  }: { kills: number; atOnce: number; seed: number; told?: () => void },
): Promise<ScreenKills> {
  const pattern = join(folder, 'pattern');
  chestInSections(ran, pattern);
  const count = { kills: 0, confirmed: 0, lost: 0, damaged: 0 };
  const random = chance(seed);
  const oneAfterAnother = async (): Promise<void> => {
    while (count.kills < kills) {
      const store = mkdtempSync(join(folder, 'store-'));
      cpSync(pattern, store, { recursive: true });
      let kept = 0;
      for (let each = 0; each < killsOfStore && count.kills < kills; each++) {
        count.kills += 1;
        const confirmed = await pressUntilKilled(ran, store, random() * killedWithin);
        const opened = await openStore(store, { clock });
        const found = opened.ok ? sectionsIn(opened.value.bench) : 0;
        if (!opened.ok || opened.value.notices.length > 0) count.damaged += 1;
        count.confirmed += Math.max(0, confirmed - kept);
        count.lost += Math.max(0, Math.max(confirmed, kept) - found);
        kept = found;
        told();
      }
      rmSync(store, { recursive: true, force: true, maxRetries: 5 });
    }
  };
  await Promise.all(Array.from({ length: atOnce }, oneAfterAnother));
  return count;
}

/** @returns the most sections that the screen ever said were on and kept */
async function pressUntilKilled({ start, environment }: Ran, store: string, afterMs: number) {
  let most = 0;
  let shows = false;
  const screen = openBareTerminal([start], environment(store), (lines) => {
    const confirmed = confirmedSections(lines());
    if (confirmed === null) return;
    shows = true;
    most = Math.max(most, confirmed);
  });
  const began = Date.now();
  while (!shows) {
    if (Date.now() - began > patience || screen.hasEnded())
      throw new Error(`a screen shows no section:\n${screen.lines().join('\n')}`);
    await wait(10);
  }
  const killAt = wait(afterMs).then(() => screen.kill('SIGKILL'));
  while (!screen.hasEnded()) {
    screen.write('s');
    await Promise.race([screen.ended, wait(betweenPresses)]);
  }
  await Promise.all([killAt, screen.ended]);
  return most;
}
