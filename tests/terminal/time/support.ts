import { existsSync, mkdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { setTimeout as wait } from 'node:timers/promises';
import { expect, onTestFinished } from 'vitest';
import { cleanEnvironment, startFile, temporaryFolder } from '../support/terminal.ts';
import { openClockedShop, type ClockedShop } from './clocked-shop.ts';
import type { BareTerminal } from '../faults/bare-terminal.ts';

export const minute = 60_000;
export const hour = 60 * minute;

const patience = 20_000;

/** The same for a test: all that it starts ends with it. */
export function clockedShop(options: Parameters<typeof openClockedShop>[2] = {}): ClockedShop {
  const folder = temporaryFolder();
  mkdirSync(folder);
  const ran = {
    start: startFile,
    environment: (store: string) => ({ ...cleanEnvironment(), RECOAT_FOLDER: store }),
  };
  const shop = openClockedShop(ran, folder, options);
  onTestFinished(shop.remove);
  return shop;
}

export async function until(
  what: string,
  isSo: () => boolean,
  seen: () => string = () => '',
): Promise<void> {
  const began = performance.now();
  while (!isSo()) {
    if (performance.now() - began > patience)
      throw new Error(`waited in vain for ${what} ${seen()}`);
    await wait(50);
  }
}

export const textOf = (screen: BareTerminal): string => screen.lines().join('\n');

export const shows = (screen: BareTerminal, words: string): Promise<void> =>
  until(
    `"${words}" on`,
    () => textOf(screen).includes(words),
    () => `\n${textOf(screen)}`,
  );

/** A screen that has opened its store and watches. */
export async function watchingScreen(shop: ClockedShop): Promise<BareTerminal> {
  const screen = shop.screen();
  await shows(screen, 'all keys');
  // What is loaded after the first frame opens the store.
  await wait(1000);
  return screen;
}

/** Nothing more is heard, in a time in which everybody looks. */
export async function hearsNoMore(shop: ClockedShop): Promise<void> {
  const before = shop.heard();
  await shop.passes(10_000);
  await wait(1000);
  expect(shop.heard()).toEqual(before);
}

/** A keeper that is there. @returns its process */
export async function keeperThere(shop: ClockedShop): Promise<number> {
  const { pid } = shop.keeper();
  if (pid === undefined) throw new Error('no keeper was started');
  await until('the keeper', () => shop.run('bench').includes('A keeper stands by'));
  // It holds its lock before it begins to watch.
  const log = join(shop.folder, 'ping-diagnostics.log');
  await until(
    'its watch',
    () => existsSync(log) && readFileSync(log, 'utf8').includes(`began by=keeper pid=${pid}`),
  );
  await wait(500);
  return pid;
}
