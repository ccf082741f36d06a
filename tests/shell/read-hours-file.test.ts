import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { expect, it, onTestFinished } from 'vitest';
import { readHoursFile } from '../../src/shell/read-hours-file.ts';

const when = { now: Date.parse('2026-11-24T14:00Z'), zone: 'UTC' };

function folder(): string {
  const made = mkdtempSync(join(tmpdir(), 'recoat-hours-file-'));
  onTestFinished(() => rmSync(made, { recursive: true, force: true }));
  return made;
}

it('finds a file from where the program was started, and from home', async () => {
  const [cwd, home] = [folder(), folder()];
  const text = 'date,piece,step class,minutes,estimate\n2026-03-14,Oak chest,strip,90,60\n';
  writeFileSync(join(cwd, 'old.csv'), text);
  writeFileSync(join(home, 'older.csv'), text);
  for (const file of ['old.csv', '~/older.csv', join(cwd, 'old.csv')])
    expect(await readHoursFile(file, { cwd, home }, when)).toMatchObject({
      problems: [],
      rows: [
        { piece: 'Oak chest', minutes: 90, estimate: 60, at: Date.parse('2026-03-14T12:00Z') },
      ],
    });
});

it('refuses what it can not read, and what is too long, in words', async () => {
  const [cwd, home] = [folder(), folder()];
  expect(await readHoursFile('none.csv', { cwd, home }, when)).toEqual({
    refused: "Not taken: none.csv can't be read (ENOENT). Check its name and that you may read it.",
  });
  writeFileSync(join(cwd, 'long.csv'), 'x'.repeat(5_000_001));
  expect(await readHoursFile('long.csv', { cwd, home }, when)).toEqual({
    refused: 'Not taken: long.csv is longer than 5 MB. Give it in several files.',
  });
});
