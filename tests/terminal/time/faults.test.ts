import { mkdirSync } from 'node:fs';
import { expect, it } from 'vitest';
import { cleanEnvironment, startFile, temporaryFolder } from '../support/terminal.ts';
import { killSenders } from './dying-senders.ts';
import { writeWhileClockJumps } from './jumping-clock.ts';

const ran = {
  start: startFile,
  environment: (store: string) => ({ ...cleanEnvironment(), RECOAT_FOLDER: store }),
};

function newFolder(): string {
  const folder = temporaryFolder();
  mkdirSync(folder);
  return folder;
}

it(
  'tells every ping whose sender is killed, twice only where it had told it and could not say so any more',
  { timeout: 120_000 },
  async () => {
    const count = await killSenders(ran, newFolder(), {
      ends: [
        ['screen', 'kill before'],
        ['keeper', 'kill after'],
        ['screen', 'at random'],
      ],
      seed: 5,
    });
    expect(count).toMatchObject({ deaths: 3, missing: 0, unexplained: 0 });
    expect(count.handedOver).toBeGreaterThanOrEqual(1);
    expect(count.twice).toBeGreaterThanOrEqual(1);
  },
);

it(
  'loses nothing that is written while the clock jumps, and counts the minutes that went by',
  { timeout: 120_000 },
  async () => {
    const count = await writeWhileClockJumps(ran, newFolder(), { notes: 12, seed: 11 });
    expect(count).toMatchObject({ lost: 0, damaged: 0 });
    expect(count.minutesOff).toBeLessThan(0.1);
    // How often depends on how quickly twelve notes are written here.
    expect(count.jumps).toBeGreaterThan(3);
  },
);
