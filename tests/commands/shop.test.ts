import { existsSync, mkdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { openForWriting } from '../../src/persist/index.ts';
import type { PingFact } from '../../src/tracker/bench/index.ts';
import { settings as table } from '../../src/tracker/settings/index.ts';
import { standardKeys } from '../../src/views/keys/key-map.ts';
import { openShop, type Shop } from './support/shop.ts';

describe('conditions', () => {
  it('are noted as they are written, and shown in the units of the shop', async () => {
    const shop = openShop({ locale: 'en-US' });
    expect(await shop.does('conditions')).toBe(
      'No reading yet. Note one: recoat conditions 66F 55%\n',
    );
    expect(await shop.does('conditions', '66F 55%')).toBe('Tue 24 Nov 2:29 pm  66 F 55 %\n');
    shop.minutesLater(60);
    const { readings } = await shop.json('conditions', '70', '60');
    expect(readings).toEqual([
      {
        tempC: expect.closeTo(21.11, 2),
        rh: 60,
        surfaceC: null,
        readAt: '2026-11-24T15:29:00.000-05:00',
      },
    ]);
    expect((await shop.json('conditions')).readings).toHaveLength(2);
    expect((await shop.json('bench')).air).toMatchObject({ rh: 60 });
  });

  it('are told by a script where nobody is there', async () => {
    for (const [interactive, by] of [
      [true, 'person'],
      [false, 'script'],
    ] as const) {
      const shop = openShop({ interactive });
      await shop.does('conditions', '19C 55%');
      const file = readFileSync(join(shop.folder, 'conditions.json'), 'utf8');
      expect(file).toContain(`"by":"${by}"`);
    }
  });

  it.each([['-60C', '40%'], ['19C'], ['warm'], ['19C', '120%']])(
    'are not %s %s',
    async (...reading) => {
      const shop = openShop();
      const { code, says } = await shop.refuses('conditions', ...reading);
      expect(code).toBe(64);
      expect(says).toMatch(/^Not noted: .*Write 19C 55%\.$/);
      expect((await shop.json('conditions')).readings).toEqual([]);
    },
  );
});

describe('settings', () => {
  it('are all listed, each with its choices', async () => {
    const shop = openShop();
    const text = await shop.does('settings');
    const { settings } = await shop.json('settings');
    expect(settings.map(({ name }) => name)).toEqual(Object.values(table).map(({ key }) => key));
    for (const { key, help } of Object.values(table)) {
      expect(text).toContain(help);
      expect(text).toMatch(new RegExp(`^${key} `, 'm'));
    }
  });

  it('are set one by one and put back', async () => {
    const shop = openShop();
    expect(await shop.does('settings', 'far-view', '5')).toBe('far-view: 5\n');
    expect(await shop.does('settings', 'far view')).toMatch(/^far-view {2}5 /);
    expect(await shop.json('settings', 'helper', 'on')).toEqual({ set: 'helper', value: true });
    await shop.does('settings', 'far-view', 'standard');
    expect((await shop.json('settings', 'far-view')).settings[0]).toMatchObject({
      value: 1,
      standard: 1,
    });
    expect(await shop.does('settings', 'helper', 'yes')).toBe('helper was so already\n');
  });

  it('move keys', async () => {
    const shop = openShop();
    await shop.does('settings', 'keys', 'ready', ']');
    const { keys } = await shop.json('keys');
    expect(keys.find(({ act }) => act === 'ready')?.keys).toEqual([']']);
    expect(await shop.does('settings', 'keys')).toBe('keys  ready: ]\n');
    expect(await shop.json('settings', 'keys')).toEqual({ settings: [], keys: { ready: [']'] } });
    await shop.does('settings', 'keys', 'standard');
    expect(await shop.does('settings', 'keys')).toBe('keys  all standard\n');
  });

  it('change what the shop’s clock shows at once', async () => {
    const shop = openShop();
    await shop.does('settings', 'zone', 'Europe/Lisbon');
    await shop.does('settings', 'clock', '12');
    expect(await shop.does('bench')).toContain('Bench, Tue 24 Nov 2026 7:29 pm');
    expect((await shop.json('bench')).at).toBe('2026-11-24T19:29:00.000+00:00');
    expect(await shop.does('bench', '--zone', 'Asia/Tokyo')).toContain('Wed 25 Nov 2026 4:29 am');
  });

  it.each([
    ['far-vew', '5', 2, 'Not set: there is no setting "far-vew".', 'far-view'],
    ['far-view', '7', 64, 'Not set: far view can\'t be "7". Write 1, 0, 2, 5 or 10.', ''],
    ['zone', 'Europe/Lisbn', 64, 'Not set: there is no zone "Europe/Lisbn".', 'Europe/Lisbon'],
    ['keys', 'redy e', 64, 'Not set: there is no act "redy".', 'ready'],
    ['keys', 'ready d', 64, 'Not set: d is the key for "done".', ''],
  ])('refuse %s %s', async (name, value, code, says, near) => {
    const shop = openShop();
    const refused = await shop.refuses('settings', name, value);
    expect(refused.code).toBe(code);
    expect(refused.says).toContain(says);
    expect(refused.says).toContain(near);
    expect(existsSync(join(shop.folder, 'settings.json'))).toBe(false);
  });

  it('offer the nearest for a name that is none', async () => {
    expect(await openShop().refuses('settings', 'far-vew')).toEqual({
      code: 2,
      says: 'Not shown: there is no setting "far-vew". Nearest: far-view.',
    });
  });
});

describe('pings', () => {
  const withPings = async (): Promise<Shop> => {
    const shop = openShop();
    await shop.does('timer', 'clamps', '35min');
    await shop.does('timer', 'kettle', '4 min');
    const opened = await openForWriting(shop.folder, {
      clock: { now: shop.now, today: () => '2026-11-24' },
    });
    if (!opened.ok) throw new Error(opened.problem.says);
    const head = (id: string) => ({
      id,
      group: id,
      at: shop.now(),
      told: shop.now(),
      by: 'clock' as const,
      uptimeMs: null,
      bootId: null,
    });
    const claim = (id: string, text: string, loud: boolean): PingFact => ({
      ...head(id),
      kind: 'ping-claimed',
      body: { pings: [id], text, loud, piece: null },
    });
    const stored = opened.value.change(() => ({
      append: {
        pings: [
          claim('loud', '2 Wall shelf: B on, by 16:42', true),
          claim('quiet', '3 Beech stool: try it', false),
          {
            ...head('sent'),
            kind: 'ping-sent',
            body: { claim: 'loud', ways: ['screen', 'bell'], failures: ['desktop: none.'] },
          },
        ],
      },
      result: null,
    }));
    expect(stored.ok).toBe(true);
    opened.value.close();
    return shop;
  };

  it('are told, those that went out and those to come', async () => {
    const shop = await withPings();
    const { sent, toCome } = await shop.json('pings');
    expect(sent).toMatchObject([
      {
        id: 'loud',
        text: '2 Wall shelf: B on, by 16:42',
        loud: true,
        seen: null,
        ways: ['screen', 'bell'],
        failures: ['desktop: none.'],
      },
      { id: 'quiet', ways: null, loud: false, seen: null },
    ]);
    expect(toCome.map(({ at }) => at)).toEqual([
      '2026-11-24T14:33:00.000-05:00',
      '2026-11-24T15:04:00.000-05:00',
    ]);
    const text = await shop.does('pings');
    expect(text).toContain(
      '2 Wall shelf: B on, by 16:42  (screen, bell; failed: desktop: none; not seen)',
    );
    expect(text).toContain('kettle');
  });

  it('are seen, all or one', async () => {
    const shop = await withPings();
    expect(await shop.does('bench')).toContain('Loud: 2 Wall shelf');
    expect((await shop.json('seen', 'loud')).seen).toEqual(['loud']);
    expect(await shop.does('bench')).not.toContain('Loud:');
    expect(await shop.refuses('seen', 'loud')).toMatchObject({ code: 2 });
    expect((await shop.json('seen')).seen).toEqual(['quiet']);
    expect(await shop.does('seen')).toBe('No ping waits to be seen.\n');
    const { sent } = await shop.json('pings');
    expect(sent.map(({ seen }) => seen)).not.toContain(null);
  });

  it('are told the last twenty, and all where all are asked for', async () => {
    const shop = openShop();
    const opened = await openForWriting(shop.folder, {
      clock: { now: shop.now, today: () => '2026-11-24' },
    });
    if (!opened.ok) throw new Error(opened.problem.says);
    const claims = Array.from({ length: 25 }, (_, index): PingFact => ({
      id: `p${index}`,
      group: `p${index}`,
      at: shop.now() + index * 60_000,
      told: shop.now() + index * 60_000,
      by: 'clock',
      uptimeMs: null,
      bootId: null,
      kind: 'ping-claimed',
      body: { pings: [`p${index}`], text: `ping ${index}`, loud: false, piece: null },
    }));
    opened.value.change(() => ({ append: { pings: claims }, result: null }));
    opened.value.close();
    shop.minutesLater(60);
    const texts = async (...more: readonly string[]): Promise<readonly string[]> =>
      (await shop.json('pings', ...more)).sent.map(({ text }) => text);
    const all = claims.map((_, index) => `ping ${index}`);
    expect(await texts()).toEqual(all.slice(5));
    expect(await texts('--all')).toEqual(all);
  });

  it('tell the day on which they were seen, where that was another', async () => {
    const shop = await withPings();
    shop.minutesLater(60);
    await shop.does('seen', 'loud');
    shop.minutesLater(17 * 60);
    await shop.does('seen', 'quiet');
    const text = await shop.does('pings');
    expect(text).toMatch(/Tue 24 Nov 14:29 {2}2 Wall shelf.*; seen 15:29\)/);
    expect(text).toMatch(/Tue 24 Nov 14:29 {2}3 Beech stool.*; seen Wed 08:29\)/);
  });
});

describe('shutting up shop', () => {
  it('tells what falls due until one is back', async () => {
    const shop = openShop({ now: '2026-11-24T17:00:00-05:00' });
    await shop.does('timer', 'clamps', '2 h');
    await shop.does('timer', 'glue', '3 d');
    const { backAt, fallsDue, spoils } = await shop.json('overnight');
    expect(backAt).toBe('2026-11-25T07:30:00.000-05:00');
    expect(fallsDue).toEqual([
      {
        piece: null,
        timer: 'clamps',
        pot: null,
        verb: 'clamps',
        at: '2026-11-24T19:00:00.000-05:00',
        ends: 'wait',
        begins: 'go',
        loss: 'costs nothing',
        says: null,
      },
    ]);
    expect(spoils).toEqual([]);
    const text = await shop.does('overnight', '--back', 'Sat 8:00');
    expect(text).toContain('clamps');
    expect(text).toContain('glue');
    expect(text).toContain('Oily rags, pads, wool, dust catch fire by themselves.');
  });

  it('takes the answers, and can be taken back', async () => {
    const shop = openShop();
    expect(await shop.does('overnight', '--rags', 'yes', '--gun', 'none')).toBe('shut up shop\n');
    const file = readFileSync(join(shop.folder, 'bench.json'), 'utf8');
    expect(file).toContain('"answers":{"rags":"yes","gun":"does not apply"}');
    expect(await shop.does('take-back')).toContain('taken back: shut up shop');
  });

  it.each([
    [['--rags', 'maybe'], 'Not noted: "maybe" is no answer for rags. Write yes, no, none.'],
    [
      ['--rags', 'constructor'],
      'Not noted: "constructor" is no answer for rags. Write yes, no, none.',
    ],
    [['--back', '25:00'], 'Not set: "25:00" is no time to be back at. Write 7:30, or Mon 7:30.'],
  ])('refuses %j', async (options, says) => {
    expect(await openShop().refuses('overnight', ...options)).toEqual({ code: 64, says });
  });
});

describe('finishing schedules', () => {
  it('are listed with how long they take', async () => {
    const shop = openShop();
    const { schedules, problems } = await shop.json('schedules');
    expect(problems).toEqual([]);
    expect(schedules.map(({ id }) => id)).toContain('bleach-and-clear');
    for (const { steps, lowMinutes, highMinutes, ...counted } of schedules) {
      expect(steps).toBeGreaterThan(0);
      expect(lowMinutes).toBeLessThan(highMinutes);
      // Of steps that exclude each other not all are counted.
      expect(counted.leastSteps).toBeLessThan(counted.mostSteps);
      expect(counted.mostSteps).toBeLessThan(steps);
      expect(counted.shortestMinutes).toBeLessThan(counted.longestMinutes);
      expect(counted.shortestMinutes).toBeLessThan(lowMinutes);
      expect(counted.leastDays).toBeGreaterThan(1);
      expect(counted.mostDays).toBeGreaterThanOrEqual(counted.leastDays);
    }
    expect(await shop.does('schedules')).toMatch(
      /^bleach-and-clear +\d+ to \d+ steps, [\d.]+ to [\d.]+ h, \d+\+ days /m,
    );
  });

  it('are copied into the own folder, where they take the place of the original', async () => {
    const shop = openShop();
    const { file } = await shop.json('schedules', 'copy', 'glue-up');
    expect(file).toBe(join(shop.folder, 'schedules', 'glue-up-repair.yaml'));
    const text = readFileSync(file, 'utf8');
    expect(text).toMatch(
      /^# yaml-language-server: \$schema=file:\/\/.*templates\/schema\/schedule\.json$/m,
    );
    expect(await shop.does('schedules', 'check', file)).toContain(`${file}: nothing wrong.\n`);
    writeFileSync(file, text.replace(/^name: .*$/m, 'name: Glue as I do it'));
    await shop.does('add', 'Chair', '--schedule', 'glue-up-repair');
    expect((await shop.json('steps', '1')).schedule.name).toBe('Glue as I do it');
    expect(await shop.refuses('schedules', 'copy', 'glue-up-repair')).toMatchObject({ code: 1 });
    expect(await shop.refuses('schedules', 'copy', 'glue-upp')).toMatchObject({ code: 2 });
  });

  it('are copied under another id, and then stand beside the original', async () => {
    const shop = openShop();
    const { file, copied } = await shop.json('schedules', 'copy', 'glue-up-repair', 'my-glue');
    expect(copied).toBe('my-glue');
    expect(file).toBe(join(shop.folder, 'schedules', 'my-glue.yaml'));
    expect(await shop.does('schedules', 'check', file)).toBe(`${file}: nothing wrong.\n`);
    const { schedules } = await shop.json('schedules');
    expect(schedules.map(({ id }) => id)).toEqual(
      expect.arrayContaining(['my-glue', 'glue-up-repair']),
    );
    expect(await shop.refuses('schedules', 'copy', 'glue-up-repair', 'My Glue')).toMatchObject({
      code: 64,
    });
  });

  it('of one’s own can go or change: a piece keeps its own copy of steps and products', async () => {
    const shop = openShop();
    const { file } = await shop.json('schedules', 'copy', 'bleach-and-clear', 'mine');
    const products = join(shop.folder, 'schedules', 'cans.yaml');
    writeFileSync(
      products,
      [
        'sources: {label: the label of my can}',
        'products:',
        '  my-clear:',
        '    {name: My clear, class: waterborne polyurethane, dries: waterborne, stated for: 23 C 50 %,',
        '    source: label, coat: {dust-free: {opens: 1 h}, scuff: {opens: 3 h}, recoat: {opens: 3 h},',
        '    turn over: {opens: 8 h}, refit: {opens: 1 d}, wrap: {opens: 3 d}}}',
      ].join('\n'),
    );
    writeFileSync(file, readFileSync(file, 'utf8').replaceAll('waterborne-clear', 'my-clear'));
    await shop.does('add', 'Chair', '--schedule', 'mine');
    await shop.does('pick-up', '1', '--step', 'clear-inside');
    await shop.does('first-stroke', '1');
    await shop.does('done', '1');
    const before = await shop.json('windows', '1');
    expect(before.windows.length).toBeGreaterThan(0);
    writeFileSync(products, readFileSync(products, 'utf8').replace('my-clear', 'my-clears'));
    // The schedule is told of it, with the nearest name; the piece goes on.
    const { problems } = await shop.json('schedules');
    expect(problems[0]).toMatchObject({ file, found: '"my-clear"', nearest: ['my-clears'] });
    expect(await shop.json('windows', '1')).toEqual(before);
    expect(await shop.does('steps', '1')).toContain('clear on insides');
  });

  it('of one’s own are checked: file, line, field, what was expected', async () => {
    const shop = openShop();
    const { file } = await shop.json('schedules', 'copy', 'glue-up-repair');
    const lines = readFileSync(file, 'utf8').split('\n');
    const at = lines.findIndex((line) => /^ +class: /.test(line));
    lines[at] = lines[at]?.replace(/class: .*/, 'class: lok over') ?? '';
    writeFileSync(file, lines.join('\n'));
    const { code, out, err } = await shop.run(['schedules', 'check', file, '--json']);
    expect({ code, err }).toEqual({ code: 1, err: '' });
    const { problems } = JSON.parse(out) as { problems: Record<string, unknown>[] };
    expect(problems).toMatchObject([
      { file, line: at + 1, found: '"lok over"', nearest: ['look over'] },
    ]);
    expect(String(problems[0]?.['field'])).toMatch(/^steps\[.+\]\.class$/);
    const text = await shop.run(['schedules', 'check', file]);
    expect(text.out).toMatch(new RegExp(`^.*, line ${at + 1}, steps\\[.+\\]\\.class: `));

    // A piece can't be added by it, and that is said with the same words.
    const added = await shop.run(['add', 'Chair', '--schedule', 'glue-up-repair']);
    expect(added.err).toContain(`line ${at + 1}`);
  });

  it('are checked all together where no file is named', async () => {
    const shop = openShop();
    expect(await shop.does('schedules', 'check')).toMatch(/schedules: no files of yours yet\.\n$/);
    const { file } = await shop.json('schedules', 'copy', 'glue-up-repair');
    expect(await shop.does('schedules', 'check')).toContain('nothing wrong in 1 file.');
    writeFileSync(file, readFileSync(file, 'utf8').replace(/class: .*/, 'class: lok over'));
    const { code, out } = await shop.run(['schedules', 'check', '--json']);
    expect(code).toBe(1);
    const { problems } = JSON.parse(out) as { problems: Record<string, unknown>[] };
    expect(problems).toMatchObject([{ file, found: '"lok over"', nearest: ['look over'] }]);
  });

  it('that can’t be read are refused', async () => {
    const shop = openShop();
    mkdirSync(join(shop.root, 'a folder'));
    for (const [name, reason] of [
      ['none.yaml', 'ENOENT'],
      ['a folder', 'EISDIR'],
    ] as const) {
      expect(await shop.refuses('schedules', 'check', name)).toEqual({
        code: 1,
        says: `Not checked: ${name} can't be read (${reason}). Check its name and that you may read it.`,
      });
    }
  });
});

it('lists the keys of the screen with what they do', async () => {
  const shop = openShop();
  const { keys } = await shop.json('keys');
  expect(keys.map(({ act }) => act)).toEqual(standardKeys.map(({ act }) => act));
  const text = await shop.does('keys');
  expect(text).toMatch(/Enter +pick up, put down/);
});
