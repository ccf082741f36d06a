import { mkdirSync } from 'node:fs';
import { expect, it } from 'vitest';
import { mountingFails } from '../../persist/mounted.ts';
import { cleanEnvironment, startFile, temporaryFolder } from '../support/terminal.ts';
import { writeAllAtOnce } from './all-at-once.ts';
import { pressOnFailingDisk, type DiskFault } from './small-disks.ts';

const ran = {
  start: startFile,
  environment: (store: string) => ({ ...cleanEnvironment(), RECOAT_FOLDER: store }),
};

it(
  'loses nothing of what two screens and a stream of commands write while a keeper watches',
  { timeout: 120_000 },
  async () => {
    const count = await writeAllAtOnce(ran, temporaryFolder(), 6000);
    expect(count).toMatchObject({ lost: 0, doubled: 0, damaged: 0 });
    expect(count.notes).toBeGreaterThan(3);
    expect(count.sections).toBeGreaterThan(3);
  },
);

it
  .skipIf(mountingFails)
  .for<DiskFault>(['fills up', 'takes no new file any more', 'can only be read'])(
  `keeps what a screen had confirmed when its disk %s${mountingFails === null ? '' : ` (skipped: ${mountingFails})`}`,
  { timeout: 120_000 },
  async (fault) => {
    const screens = 3;
    const folder = temporaryFolder();
    mkdirSync(folder);
    const count = await pressOnFailingDisk(ran, folder, {
      fault,
      kind: 'tmpfs',
      screens,
      seed: 3,
    });
    expect(count).toMatchObject({ screens, lost: 0, damaged: 0 });
    expect(count.refused).toBeGreaterThan(0);
    if (fault === 'can only be read')
      expect(count).toMatchObject({ confirmed: 0, refused: screens, recovered: 0 });
    else {
      expect(count.confirmed).toBeGreaterThan(screens);
      expect(count.recovered).toBe(screens);
    }
  },
);
