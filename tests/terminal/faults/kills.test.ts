import { mkdirSync } from 'node:fs';
import { expect, it } from 'vitest';
import { cleanEnvironment, startFile, temporaryFolder } from '../support/terminal.ts';
import { killScreens } from './kill-screens.ts';

it(
  'keeps all that a screen had confirmed when it is killed while a key is pressed',
  { timeout: 120_000 },
  async () => {
    const folder = temporaryFolder();
    mkdirSync(folder);
    const environment = (store: string) => ({ ...cleanEnvironment(), RECOAT_FOLDER: store });
    const count = await killScreens({ start: startFile, environment }, folder, {
      kills: 12,
      atOnce: 2,
      seed: 7,
    });
    expect(count).toMatchObject({ kills: 12, lost: 0, damaged: 0 });
    expect(count.confirmed).toBeGreaterThan(6);
  },
);
