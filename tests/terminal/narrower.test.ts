import { spawnSync } from 'node:child_process';
import { expect, it } from 'vitest';
import { cleanEnvironment, openTerminal, startFile, temporaryFolder } from './support/terminal.ts';

it('leaves nothing of the wider screen where the terminal grows narrower', async () => {
  const folder = temporaryFolder();
  for (const words of [
    ['add', 'Stool', '--schedule', 'bleach-and-clear'],
    ['settings', 'desktop', 'false'],
    ['timer', 'a timer with a name that fills a row of the wider screen alone', '90min'],
  ])
    spawnSync(process.execPath, [startFile, ...words, '--folder', folder], {
      env: cleanEnvironment(),
    });
  const terminal = openTerminal({ folder });
  await terminal.shows('Stool');
  await terminal.settles();
  for (const columns of [40, 64, 33]) {
    await terminal.resize(columns, 24);
    await terminal.settles();
    const fresh = openTerminal({ folder, columns });
    await fresh.shows('Stool');
    await fresh.settles();
    // The minute may have changed between the two.
    const plain = (lines: readonly string[]) => lines.map((line) => line.replaceAll(/\d/g, '0'));
    expect(plain(terminal.lines())).toEqual(plain(fresh.lines()));
    fresh.kill('SIGKILL');
  }
});
