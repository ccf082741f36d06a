import { once } from 'node:events';
import { symlinkSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, it } from 'vitest';
import {
  isKeeperPresent,
  isScreenPresent,
  presentAsKeeper,
  presentAsScreen,
} from '../../../src/persist/presence/presence.ts';
import { conversation, start } from '../children/child.ts';
import { programs } from '../children/programs.ts';
import { newFolder } from '../places.ts';

/** Another process that is there. */
async function another(as: 'screen' | 'keeper', folder: string) {
  const child = start(programs.present, [as, folder]);
  const isThere = await conversation(child).hear();
  return {
    isThere,
    kill: async () => {
      child.kill('SIGKILL');
      await once(child, 'exit');
    },
  };
}

it('knows nobody in an empty folder, and leaves it empty by asking', () => {
  const folder = newFolder();
  expect(isScreenPresent(folder)).toBe(false);
  expect(isKeeperPresent(folder)).toBe(false);
});

it('knows of a screen in another process until that is killed', async () => {
  const folder = newFolder();
  const screen = await another('screen', folder);
  expect(screen.isThere).toBe(true);
  expect(isScreenPresent(folder)).toBe(true);
  expect(isKeeperPresent(folder)).toBe(false);
  await screen.kill();
  expect(isScreenPresent(folder)).toBe(false);
});

it('lets several screens be there, and goes by the last', async () => {
  const folder = newFolder();
  const first = await another('screen', folder);
  const mine = presentAsScreen(folder);
  expect(mine).not.toBeNull();
  await first.kill();
  expect(isScreenPresent(folder)).toBe(true);
  mine?.leave();
  expect(isScreenPresent(folder)).toBe(false);
});

it('lets one keeper be there, and another once that is killed', async () => {
  const folder = newFolder();
  const first = await another('keeper', folder);
  expect(first.isThere).toBe(true);
  expect(isKeeperPresent(folder)).toBe(true);
  expect(presentAsKeeper(folder)).toBeNull();
  expect((await another('keeper', folder)).isThere).toBe(false);
  await first.kill();
  const mine = presentAsKeeper(folder);
  expect(mine).not.toBeNull();
  expect(isKeeperPresent(folder)).toBe(true);
  mine?.leave();
});

it('counts nobody as there by a file that is no lock', () => {
  const folder = newFolder();
  writeFileSync(join(folder, 'screens.sqlite'), 'no database at all '.repeat(100));
  expect(isScreenPresent(folder)).toBe(false);
});

it('follows no link, and is nobody where there is no folder', () => {
  const folder = newFolder();
  writeFileSync(join(folder, 'elsewhere'), '');
  symlinkSync(join(folder, 'elsewhere'), join(folder, 'screens.sqlite'));
  expect(presentAsScreen(folder)).toBeNull();
  expect(isScreenPresent(folder)).toBe(false);
  expect(presentAsKeeper(join(folder, 'gone'))).toBeNull();
});
