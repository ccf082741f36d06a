import { mkdirSync, readFileSync, statSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { openShop, type Shop } from './support/shop.ts';

const day = 24 * 60;

/** A shop with a piece on the bench, one in the history, a reading, a setting and a schedule of its own. */
async function workedShop(): Promise<Shop> {
  const shop = openShop();
  await shop.does('add', 'Oak\u001b[31m chest', '--schedule', 'paint-and-wax');
  await shop.does('add', 'Stool', '--schedule', 'paint-and-wax');
  await shop.does('conditions', '19C 55%');
  await shop.does('settings', 'clock', '12');
  await shop.does('schedules', 'copy', 'glue-up-repair');
  await shop.does('pick-up', '1');
  shop.minutesLater(20);
  await shop.does('put-down');
  await shop.does('off-bench', '2');
  shop.minutesLater(3 * day);
  return shop;
}

const bring = (from: Shop, to: Shop, name = 'all.json'): void =>
  writeFileSync(join(to.root, name), readFileSync(join(from.root, name)));

describe('export and import', () => {
  it('bring a shop into another folder, and the same again changes nothing', async () => {
    const shop = await workedShop();
    expect(await shop.does('export', 'all.json')).toMatch(/exported to .*all\.json: \d+ facts/);
    expect(statSync(join(shop.root, 'all.json')).mode & 0o777).toBe(0o600);
    const other = openShop();
    other.minutesLater(3 * day + 20);
    bring(shop, other);
    expect((await other.json('import', 'all.json')).changed).toBe(true);
    for (const line of [
      ['bench'],
      ['steps', '1'],
      ['past'],
      ['settings'],
      ['conditions'],
      ['hours', '1'],
    ])
      expect(await other.does(...line, '--json'), line[0]).toBe(await shop.does(...line, '--json'));
    expect(readFileSync(join(other.folder, 'schedules', 'glue-up-repair.yaml'), 'utf8')).toBe(
      readFileSync(join(shop.folder, 'schedules', 'glue-up-repair.yaml'), 'utf8'),
    );
    expect(await other.does('import', 'all.json')).toContain('nothing was changed');
    await other.does('note', '1', 'went on here');
    expect((await other.json('import', 'all.json')).changed).toBe(false);
  });

  it('print the same file where none is named', async () => {
    const shop = await workedShop();
    const printed = await shop.does('export');
    const other = openShop();
    writeFileSync(join(other.root, 'all.json'), printed);
    await other.does('import', 'all.json');
    expect(await other.does('export')).toBe(printed);
    expect((await shop.json('export')).text).toBe(printed);
  });

  it('go into no store that holds something else, and leave it as it was', async () => {
    const shop = await workedShop();
    await shop.does('export', 'all.json');
    const other = openShop();
    bring(shop, other);
    await other.does('add', 'Box', '--schedule', 'paint-and-wax');
    const before = await other.does('export');
    const { says, code } = await other.refuses('import', 'all.json');
    expect([code, says]).toEqual([
      1,
      expect.stringMatching(/^Not imported: .*Nothing was changed/),
    ]);
    expect(await other.does('export')).toBe(before);
  });

  it('go into none where a setting or a schedule was chosen otherwise', async () => {
    const shop = await workedShop();
    await shop.does('export', 'all.json');
    const chosen = openShop();
    bring(shop, chosen);
    await chosen.does('settings', 'clock', '24');
    expect((await chosen.refuses('import', 'all.json')).says).toContain('setting clock');
    const written = openShop();
    bring(shop, written);
    mkdirSync(join(written.folder, 'schedules'), { recursive: true });
    writeFileSync(join(written.folder, 'schedules', 'glue-up-repair.yaml'), 'mine');
    expect((await written.refuses('import', 'all.json')).says).toContain(
      'schedules/glue-up-repair.yaml',
    );
  });

  it('go on with an import that was cut off', async () => {
    const shop = await workedShop();
    await shop.does('settings', 'keeper', 'no');
    await shop.does('export', 'all.json');
    const other = openShop();
    bring(shop, other);
    // What stands there after a kill: schedules, settings and years, and no bench yet.
    mkdirSync(join(other.folder, 'schedules'), { recursive: true });
    await other.does('settings', 'clock', '12');
    await other.does('import', 'all.json');
    expect(await other.does('export')).toBe(await shop.does('export'));
  });

  it('refuse a newer, a damaged, a foreign and a missing file, and say where', async () => {
    const shop = await workedShop();
    const text = await shop.does('export');
    const other = openShop();
    const told = async (content: string): Promise<string> => {
      writeFileSync(join(other.root, 'x.json'), content);
      const { says, code } = await other.refuses('import', 'x.json');
      expect(code).toBe(1);
      return says;
    };
    expect(await told(text.replace('"recoat":1', '"recoat":2'))).toMatch(/newer recoat \(form 2/);
    expect(await told(text.replace('"kind":"piece-added"', '"kind":"piece-eaten"'))).toMatch(
      /damaged: line \d+: bench: fact 1: kind is "piece-eaten"/,
    );
    expect(await told(text.slice(0, text.length / 2))).toMatch(
      /damaged: line \d+: it is cut short/,
    );
    expect(await told(text.replace('"pings":{', '"pings":{{'))).toMatch(/line \d+: it is not JSON/);
    expect(await told(text.replace('Stool', 'Stoop'))).toMatch(/sum doesn't fit/);
    const lines = text.split('\n');
    for (const at of [0, 1, 2, 4, lines.length - 2]) {
      const broken = lines.with(at, `${lines[at] ?? ''}}:`).join('\n');
      // What closes too much breaks where it stands.
      expect(await told(broken)).toContain(`line ${at + 1}: it is not JSON`);
    }
    expect(await told('')).toContain('it is empty');
    expect(await told('{"recoat":1,"facts":[]}')).toContain('no exported store');
    expect((await other.refuses('import', 'none.json')).says).toContain('ENOENT');
    expect((await other.refuses('import', '.')).says).toContain('no plain file');
    expect((await other.json('bench')).rows).toEqual([]);
    // A change that was meant: the sum is taken out.
    await told(text.replace('Stool', 'Stoop'));
    writeFileSync(
      join(other.root, 'x.json'),
      text.replaceAll('Stool', 'Stoop').replace(/,"sum":"\w+"/, ''),
    );
    await other.does('import', 'x.json');
    expect(await other.does('past')).toContain('Stoop');
  });

  it('write over no file that is not theirs', async () => {
    const shop = await workedShop();
    writeFileSync(join(shop.root, 'letter.txt'), 'Dear customer');
    expect((await shop.refuses('export', 'letter.txt')).says).toMatch(/is no exported store/);
    expect(readFileSync(join(shop.root, 'letter.txt'), 'utf8')).toBe('Dear customer');
    await shop.does('export', 'all.json');
    await shop.does('export', 'all.json');
    expect((await shop.refuses('export', 'no/such/folder.json')).says).toMatch(/^Not written: /);
    // A file of the store itself is none either.
    expect((await shop.refuses('export', 'store/bench.json')).says).toMatch(/is no exported store/);
  });
});
