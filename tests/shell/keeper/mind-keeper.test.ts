import { mkdirSync, mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { expect, it, onTestFinished } from 'vitest';
import { isScreenPresent } from '../../../src/persist/presence/index.ts';
import { newId } from '../../../src/shell/ids.ts';
import { mindKeeper } from '../../../src/shell/keeper/mind-keeper.ts';
import type { Session } from '../../../src/shell/session.ts';
import { standardSettings } from '../../../src/tracker/settings/index.ts';
import { minute, second } from '../../../src/tracker/time/index.ts';
import { startOfTests, steppedClock } from '../support/stepped-clock.ts';

/** A screen in an empty folder, where no keeper can be started: trying it is said. */
function minded(
  chosen: { readonly hook?: string; readonly desktop?: boolean },
  desktop: boolean | null,
  isFolderThere = true,
) {
  const parent = mkdtempSync(join(tmpdir(), 'recoat-minded-'));
  const folder = join(parent, 'store');
  if (isFolderThere) mkdirSync(folder);
  const clock = steppedClock(startOfTests);
  const said: string[] = [];
  let keeper = '';
  const session = {
    setKeeper: (next: string) => (keeper = next),
    pingWays: () => ({ desktop, says: '' }),
    say: (words: string) => said.push(words),
    snapshot: () => ({ settings: { ...standardSettings, keeper: 'yes', ...chosen } }),
  } as unknown as Session;
  const minding = mindKeeper(
    {
      clock,
      newId,
      env: {},
      platform: 'linux',
      home: join(parent, 'none'),
      cwd: folder,
      here: { zone: 'UTC', locale: 'en-GB' },
      packageFolder: folder,
      version: '0.0.0',
      interactive: false,
      print: () => undefined,
      printError: () => undefined,
    },
    session,
    folder,
  );
  onTestFinished(() => {
    minding.leave();
    rmSync(parent, { recursive: true });
  });
  return { minding, clock, folder, said, keeper: () => keeper };
}

/** The same, once it has seen that a ping is to come. */
function looked(...given: Parameters<typeof minded>) {
  const { minding, clock, keeper, said } = minded(...given);
  minding.looked(clock.now() + minute);
  return { keeper: keeper(), said };
}

it.each([
  ['a desktop that shows pings', {}, true],
  ['a desktop that was not tried yet', {}, null],
  ['a hook beside a desktop that shows none', { hook: 'true' }, false],
  ['a hook, and the desktop switched off', { hook: 'true', desktop: false }, null],
] as const)('a keeper is offered and started with %s', (_, chosen, desktop) => {
  const { keeper, said } = looked(chosen, desktop);
  expect(keeper).toBe('none');
  expect(said).toEqual([expect.stringMatching(/^No keeper: it could not be started/)]);
});

it.each([
  ['a desktop that shows none', {}, false],
  ['the desktop switched off', { desktop: false }, true],
] as const)(
  'nobody would hear a keeper with %s and no hook: none is offered or started',
  (_, chosen, desktop) => {
    expect(looked(chosen, desktop)).toEqual({ keeper: 'cannot', said: [] });
  },
);

it('one that was started gets a minute until it is there', () => {
  const { minding, clock, said } = minded({}, true);
  const startedAfter = (ms: number): number => {
    clock.pass(ms);
    minding.looked(clock.now() + minute);
    return said.length;
  };
  expect([0, 10 * second, 49 * second].map(startedAfter)).toEqual([1, 1, 1]);
  expect(startedAfter(5 * second)).toBe(2);
});

it('none is started by a screen that closes while nothing is to come', () => {
  for (const [next, starts] of [
    [null, 0],
    [startOfTests + minute, 1],
  ] as const) {
    const { minding, said } = minded({}, true);
    minding.looked(next);
    said.length = 0;
    minding.leave();
    expect(said).toHaveLength(starts);
  }
});

it('keepers hear of a screen as soon as its folder takes the file', () => {
  const { minding, folder } = minded({}, true, false);
  mkdirSync(folder);
  expect(isScreenPresent(folder)).toBe(false);
  minding.looked(null);
  expect(isScreenPresent(folder)).toBe(true);
});
