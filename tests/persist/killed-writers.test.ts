import { mkdirSync, readdirSync } from 'node:fs';
import { join } from 'node:path';
import { expect, it } from 'vitest';
import { killWhileWriting } from './kill-loop.ts';
import { newFolder, openWriter, put, textOf } from './places.ts';

const kills = 25;

it(
  'keeps every confirmed change, and every file whole, over kill -9 at any moment',
  { timeout: 120_000 },
  async () => {
    const count = await killWhileWriting(newFolder(), kills, 300_000);
    expect(count).toMatchObject({ kills, lost: 0, damaged: 0 });
    expect(count.confirmed).toBeGreaterThanOrEqual(kills);
  },
);

it('takes away what killed processes left half written, and nothing else', async () => {
  const folder = newFolder();
  (await openWriter(folder)).close();
  mkdirSync(join(folder, 'history'));
  const orphans = [
    'bench.json.tmp-7640000001a2b3cd',
    'settings.json.tmp-1764000000abcdef',
    'history/2026.json.tmp-1764000000abcdef',
    'bench.prev.json.part',
  ];
  const others = [
    'bench.json.tmp-mine',
    'notes.json.tmp-1764000000abcdef',
    'bench.damaged-20261124-150640.json',
  ];
  for (const name of [...orphans, ...others]) put(folder, name, 'x');
  await openWriter(folder);
  const left = readdirSync(folder, { recursive: true });
  for (const name of others) expect(textOf(folder, name)).toBe('x');
  for (const name of orphans) expect(left).not.toContain(name);
});
