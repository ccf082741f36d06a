import {
  existsSync,
  mkdirSync,
  readdirSync,
  readFileSync,
  statfsSync,
  writeFileSync,
} from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { mountingFails, newDisk } from '../persist/mounted.ts';
import { openShop } from './support/shop.ts';

describe('a store', () => {
  it('on a disk that can only be read leaves everything as it was, and looking works', async (context) => {
    if (mountingFails !== null) return context.skip(mountingFails);
    const { folder: disk, makeReadOnly } = newDisk(4 * 1024 * 1024);
    const shop = openShop();
    const folder = join(disk, 'store');
    await shop.does('add', 'Oak chest', '--schedule', 'glue-up-repair', '--folder', folder);
    const before = await shop.does('bench', '--folder', folder);
    makeReadOnly();
    const { code, says } = await shop.refuses('pick-up', '1', '--folder', folder);
    expect(code).toBe(3);
    expect(says).toMatch(
      /^Not opened for work: .* can't be written\. .*Looking works all the same\.$/,
    );
    expect(await shop.does('bench', '--folder', folder)).toBe(before);
  });

  it('on a full disk keeps what it had', async (context) => {
    if (mountingFails !== null) return context.skip(mountingFails);
    const { folder: disk } = newDisk(256 * 1024);
    const shop = openShop();
    const folder = join(disk, 'store');
    await shop.does('add', 'Oak chest', '--schedule', 'glue-up-repair', '--folder', folder);
    writeFileSync(join(disk, 'filling'), '');
    const room = statfsSync(disk).bavail * statfsSync(disk).bsize;
    writeFileSync(join(disk, 'filling'), Buffer.alloc(Math.max(0, room - 4096)));
    const before = await shop.does('job-card', '1', '--folder', folder);
    const { code, says } = await shop.refuses('note', '1', 'x'.repeat(70_000), '--folder', folder);
    expect(code).toBe(3);
    expect(says).toContain('Not stored: there is no room left for ');
    expect(await shop.does('job-card', '1', '--folder', folder)).toBe(before);
  });

  it('whose folder is a file is refused with what to do', async () => {
    const shop = openShop();
    writeFileSync(join(shop.root, 'plain'), 'text');
    const folder = join(shop.root, 'plain', 'store');
    const { code, says } = await shop.refuses('conditions', '19C 55%', '--folder', folder);
    expect(code).toBe(3);
    expect(says).toMatch(/^Not stored: .*plain.*\. Check the disk and the folder/);
  });

  it('of a newer program is left untouched, by looking and by work', async () => {
    const shop = openShop();
    mkdirSync(shop.folder, { recursive: true });
    const file = join(shop.folder, 'bench.json');
    writeFileSync(file, '{"recoat":9999,"facts":[\n],"sum":"0"}\n');
    for (const line of [['bench'], ['done', '1'], ['hours', '1'], ['overnight', '--rags', 'no']]) {
      const { code, says } = await shop.refuses(...line);
      expect(code, line.join(' ')).toBe(3);
      expect(says).toMatch(/^Not /);
    }
    expect(readFileSync(file, 'utf8')).toContain('9999');
  });

  it('that was damaged is mended, and that is said beside the answer', async () => {
    const shop = openShop();
    await shop.does('add', 'Oak chest', '--schedule', 'glue-up-repair');
    await shop.does('note', '1', 'first');
    const file = join(shop.folder, 'bench.json');
    writeFileSync(file, readFileSync(file, 'utf8').slice(0, -40));
    const { code, out, err } = await shop.run(['bench', '--json']);
    expect(code).toBe(0);
    expect(JSON.parse(out).rows).toHaveLength(1);
    expect(err).toContain('bench');
    expect(readdirSync(shop.folder).some((name) => name.includes('damaged'))).toBe(true);
    expect(await shop.run(['bench', '--json'])).toMatchObject({ code: 0, err: '' });
  });

  it('with a setting that is none says so and goes on', async () => {
    const shop = openShop();
    mkdirSync(shop.folder, { recursive: true });
    writeFileSync(
      join(shop.folder, 'settings.json'),
      JSON.stringify({ recoat: 1, settings: { bell: 'lound', zone: 'Europe/Lisbon' } }),
    );
    const { code, out, err } = await shop.run(['bench']);
    expect(code).toBe(0);
    expect(out).toContain('Tue 24 Nov 2026 19:29');
    expect(err).toMatch(/settings\.json: "bell" is "lound"; .* Nearest: loud\.\n$/);
  });

  it('names its daily copy after the shop’s day', async () => {
    // Wednesday in Lisbon while it is still Tuesday in New York.
    const shop = openShop({ now: '2026-11-24T22:00:00-05:00' });
    await shop.does('settings', 'zone', 'Europe/Lisbon');
    await shop.does('add', 'Oak chest', '--schedule', 'glue-up-repair');
    await shop.does('note', '1', 'second write');
    expect(readdirSync(join(shop.folder, 'backups'))).toEqual(['bench-2026-11-25.json']);
  });
});

describe('a folder that is named and holds no store', () => {
  const lines = [
    ['bench'],
    ['bench', '--json'],
    ['past'],
    ['conditions'],
    ['pings'],
    ['overnight'],
    ['pick-up', '1'],
    ['seen'],
  ];

  it.each(lines)('is told by %s, and stays as it is', async (...line) => {
    const shop = openShop();
    const { code, says } = await shop.refuses(...line, '--folder', join(shop.root, 'stroe'));
    expect(code).toBe(3);
    expect(says).toContain(`there is no store in ${join(shop.root, 'stroe')}.`);
    expect(says).toContain(`recoat add NAME --schedule ID --folder ${join(shop.root, 'stroe')}`);
    expect(existsSync(join(shop.root, 'stroe'))).toBe(false);
  });

  it('is begun by adding a piece, also where there is an empty folder', async () => {
    const shop = openShop();
    const folder = join(shop.root, 'new');
    mkdirSync(folder);
    expect(await shop.refuses('bench', '--folder', folder)).toMatchObject({ code: 3 });
    await shop.does('add', 'Oak chest', '--schedule', 'glue-up-repair', '--folder', folder);
    expect(await shop.does('bench', '--folder', folder)).toContain('Oak chest');
  });

  it('may hold as little as a year of history', async () => {
    const shop = openShop();
    mkdirSync(join(shop.root, 'old', 'history'), { recursive: true });
    expect(await shop.does('bench', '--folder', join(shop.root, 'old'))).toContain('bench');
  });

  it('is an empty shop where none was named', async () => {
    expect((await openShop().run(['bench'])).code).toBe(0);
  });
});
