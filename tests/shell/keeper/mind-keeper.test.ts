import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { expect, it, onTestFinished } from 'vitest';
import { systemClock } from '../../../src/shell/clock.ts';
import { newId } from '../../../src/shell/ids.ts';
import { mindKeeper } from '../../../src/shell/keeper/mind-keeper.ts';
import type { Session } from '../../../src/shell/session.ts';
import { standardSettings } from '../../../src/tracker/settings/index.ts';

const clock = systemClock();

/** A screen in an empty folder, where no keeper can be started: trying it is said. */
function minded(
  chosen: { readonly hook?: string; readonly desktop?: boolean },
  desktop: boolean | null,
) {
  const folder = mkdtempSync(join(tmpdir(), 'recoat-minded-'));
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
      home: join(folder, 'none'),
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
    rmSync(folder, { recursive: true });
  });
  minding.looked(clock.now() + 60_000);
  return { keeper, said };
}

it.each([
  ['a desktop that shows pings', {}, true],
  ['a desktop that was not tried yet', {}, null],
  ['a hook beside a desktop that shows none', { hook: 'true' }, false],
  ['a hook, and the desktop switched off', { hook: 'true', desktop: false }, null],
] as const)('a keeper is offered and started with %s', (_, chosen, desktop) => {
  const { keeper, said } = minded(chosen, desktop);
  expect(keeper).toBe('none');
  expect(said).toEqual([expect.stringMatching(/^No keeper: it could not be started/)]);
});

it.each([
  ['a desktop that shows none', {}, false],
  ['the desktop switched off', { desktop: false }, true],
] as const)(
  'nobody would hear a keeper with %s and no hook: none is offered or started',
  (_, chosen, desktop) => {
    expect(minded(chosen, desktop)).toEqual({ keeper: 'cannot', said: [] });
  },
);
