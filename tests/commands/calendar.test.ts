import { readFileSync, statSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { readCalendar as read } from './support/ical.ts';
import { comeTo } from './support/come-to.ts';
import { openShop, type Shop } from './support/shop.ts';

/** A bleach under way since 14:29 of a New York November, which is 19:29 UTC; it is hardwood. */
async function bleaching(name = 'Oak chest'): Promise<Shop> {
  const shop = openShop();
  await shop.does('add', name, '--schedule', 'bleach-and-clear', '--wood', 'hard');
  await comeTo(shop, 'bleach');
  await shop.does('first-stroke', '1');
  return shop;
}

const writes = async (shop: Shop): Promise<string> => {
  await shop.does('calendar', 'bench.ics');
  return readFileSync(join(shop.root, 'bench.ics'), 'utf8');
};

describe('the calendar', () => {
  it('has each window from its opening to its closing, with its pings as alarms, in UTC', async () => {
    const shop = await bleaching();
    const text = await writes(shop);
    expect(text.split('\r\n').every((line) => Buffer.byteLength(line) <= 75)).toBe(true);
    const [b] = read(text);
    expect(b).toMatchObject({
      summary: '1 Oak chest: B on',
      start: '2026-11-24T19:39:00.000Z',
      end: '2026-11-24T19:49:00.000Z',
      allDay: false,
    });
    const { toCome } = await shop.json('pings');
    expect(b?.alarms).toEqual(toCome.map(({ at }) => new Date(at).toISOString()));
    expect(b?.alarms.length).toBeGreaterThan(2);
  });

  it('has what can still be used, each with its own alarms that are still to come', async () => {
    const shop = await bleaching();
    await shop.does('timer', 'clamps', '2h');
    // A minute after the first ping before B.
    shop.minutesLater(8);
    const entries = read(await writes(shop));
    const { toCome } = await shop.json('pings');
    const ofB = toCome.filter(({ piece }) => piece?.number === 1);
    expect(Object.fromEntries(entries.map(({ summary, alarms }) => [summary, alarms]))).toEqual({
      '1 Oak chest: B on': ofB.map(({ at }) => new Date(at).toISOString()),
      clamps: ['2026-11-24T21:29:00.000Z'],
    });
    // B has just been lost; and a timer that is up stays so, and never closes.
    shop.minutesLater(12);
    expect(read(await writes(shop)).map(({ summary }) => summary)).toEqual(['clamps']);
    shop.minutesLater(110);
    expect(read(await writes(shop))).toEqual([]);
  });

  it('gives each entry an id that stays, and an edition that grows', async () => {
    const shop = await bleaching();
    const [before] = read(await writes(shop));
    shop.minutesLater(1);
    await shop.does('later', '1');
    const [after] = read(await writes(shop));
    expect(after?.uid).toBe(before?.uid);
    expect(after?.start).toBe('2026-11-24T19:40:00.000Z');
    expect(after?.sequence).toBeGreaterThan(before?.sequence ?? 0);
  });

  it('counts on also where something was taken back, and where only the air has changed', async () => {
    const shop = await bleaching();
    await shop.does('hold', '1', 'hinge', '--ask', '2026-12-01');
    const held = async () =>
      read(await writes(shop)).find(({ summary }) => summary.includes('ask again'));
    const first = await held();
    await shop.does('take-back');
    shop.minutesLater(1);
    await shop.does('hold', '1', 'hinge', '--ask', '2026-12-03');
    const second = await held();
    expect(second?.uid).toBe(first?.uid);
    expect(second?.start).not.toBe(first?.start);
    expect(second?.sequence).toBeGreaterThan(first?.sequence ?? 0);
    shop.minutesLater(1);
    await shop.does('conditions', '17C', '58%');
    expect((await held())?.sequence).toBeGreaterThan(second?.sequence ?? 0);
  });

  it('names an odd timer by its label, and the piece that it is for', async () => {
    const shop = openShop();
    await shop.does('add', 'Box', '--schedule', 'paint-and-wax');
    await shop.does('timer', 'clamps', '2h', '--piece', '1');
    await shop.does('timer', 'glue pot', '1h');
    expect(
      read(await writes(shop))
        .map(({ summary }) => summary)
        .sort(),
    ).toEqual(['1 Box: clamps', 'glue pot']);
  });

  it('says which pot, and which part, an entry is about', async () => {
    const shop = openShop();
    await shop.does('add', 'Oak chest', '--schedule', 'bleach-and-clear', '--wood', 'hard');
    await shop.does('parts', '1', 'case', 'drawers');
    await comeTo(shop, 'bleach');
    await shop.does('first-stroke', '1', '--part', 'case');
    shop.minutesLater(1);
    await shop.does('first-stroke', '1', '--part', 'drawers');
    await shop.does('pot', 'mix', 'two-part-polyurethane');
    const summaries = read(await writes(shop)).map(({ summary }) => summary);
    expect(summaries).toContain('1 Oak chest, case: B on');
    expect(summaries).toContain('1 Oak chest, drawers: B on');
    expect(
      summaries.filter((each) => each.startsWith('Pot A, two-part polyurethane: ')),
    ).toHaveLength(1);
  });

  it('folds a line of any letters within 75 bytes and in none of them, with CR LF', async () => {
    const name = `${'抽斗'.repeat(20)}, für é; "x"`;
    const text = await writes(await bleaching(name));
    expect(text.replaceAll('\r\n', '')).not.toMatch(/[\r\n]/);
    const lines = text.split('\r\n');
    expect(lines.every((line) => Buffer.byteLength(line) <= 75 && line.isWellFormed())).toBe(true);
    expect(text).not.toContain('\ufffd');
    expect(read(text)[0]?.summary).toBe(`1 ${name}: B on`);
  });

  it('has promised days as whole days in any zone, and holds at nine', async () => {
    for (const zone of ['America/New_York', 'Pacific/Auckland']) {
      const shop = openShop({ zone });
      await shop.does('add', 'Box', '--schedule', 'paint-and-wax', '--promised', '2026-11-28');
      await shop.does('hold', '1', 'hinge', '--ask', '2026-12-01');
      const entries = read(await writes(shop));
      expect(entries.find(({ summary }) => summary === '1 Box: promised')).toMatchObject({
        allDay: true,
        start: '2026-11-28',
        end: '2026-11-29',
        // At nine on the day before, while something can still be done about it.
        alarms: [
          zone === 'America/New_York' ? '2026-11-27T14:00:00.000Z' : '2026-11-26T20:00:00.000Z',
        ],
      });
      const hold = entries.find(({ summary }) => summary.includes('ask again, hinge'));
      const nine = zone === 'America/New_York' ? '2026-12-01T14:00' : '2026-11-30T20:00';
      expect(hold?.start).toBe(`${nine}:00.000Z`);
    }
  });

  it('carries no text of a name as anything but text', async () => {
    const shop = await bleaching('Box; BEGIN:VALARM, "x" \\n\nEND:VEVENT\u0007');
    const entries = read(await writes(shop));
    expect(entries).toHaveLength(1);
    expect(entries[0]?.summary).toContain('BEGIN:VALARM, "x"');
    expect(entries[0]?.summary).not.toContain('\u0007');
  });

  it('is empty for an empty bench, and printed where no file is named', async () => {
    const shop = openShop();
    const text = await shop.does('calendar');
    expect(read(text)).toEqual([]);
    expect(await shop.json('calendar')).toEqual({ file: null, entries: [] });
  });

  it('writes over its own file only, for its owner only', async () => {
    const shop = await bleaching();
    await writes(shop);
    expect(statSync(join(shop.root, 'bench.ics')).mode & 0o777).toBe(0o600);
    writeFileSync(join(shop.root, 'letter.txt'), 'Dear customer');
    const { says } = await shop.refuses('calendar', 'letter.txt');
    expect(says).toMatch(/^Not written: .*letter\.txt is there already/);
    expect(readFileSync(join(shop.root, 'letter.txt'), 'utf8')).toBe('Dear customer');
    expect((await shop.refuses('calendar', 'no/such/folder.ics')).says).toMatch(/^Not written: /);
  });
});
