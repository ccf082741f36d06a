import { describe, expect, it } from 'vitest';
import type { WindowJson } from '../../src/commands/json-shapes/index.ts';
import { comeTo } from './support/come-to.ts';
import { openShop, type Shop } from './support/shop.ts';

const withPiece = async (schedule: string, name = 'Oak chest'): Promise<Shop> => {
  const shop = openShop({ now: '2026-11-24T08:00:00-05:00' });
  await shop.does('add', name, '--schedule', schedule, '--wood', 'hard');
  return shop;
};

describe('a pot', () => {
  it('is mixed, told, and washed out', async () => {
    const shop = openShop({ now: '2026-11-24T08:00:00-05:00' });
    expect(await shop.does('pot')).toBe('No pot is mixed.\n');
    expect(await shop.does('pot', 'mix', 'two-part-polyurethane')).toContain(
      'pot A mixed, two-part polyurethane',
    );
    expect(await shop.does('pot')).toContain('pot A, two-part polyurethane: mixed 08:00');
    expect(await shop.json('pot')).toMatchObject({ pots: [{ letter: 'A', washedOut: null }] });
    expect((await shop.json('bench')).rows).toMatchObject([{ piece: null, pot: { letter: 'A' } }]);
    expect(await shop.does('overnight')).toContain('open    pot A, two-part polyurethane');
    expect(await shop.run(['pot', 'wash-out', 'b'])).toMatchObject({
      code: 2,
      err: 'Not washed out: there is no open pot "b". Nearest: A.\n',
    });
    expect(await shop.does('pot', 'wash-out', 'a')).toContain('washed out');
    expect(await shop.json('pot')).toEqual({ pots: [] });
    expect(await shop.run(['pot', 'mix', 'shellac'])).toMatchObject({
      code: 1,
      err: 'Not mixed: Shellac, 1 to 2 lb cut is used as it is; it has no pot life.\n',
    });
  });
});

describe('several pieces in one go', () => {
  it('are picked up together, and one more is taken along', async () => {
    const shop = await withPiece('glue-up-repair', 'Oak chair');
    for (const name of ['Ash chair', 'Elm chair'])
      await shop.does('add', name, '--schedule', 'glue-up-repair');
    expect(await shop.does('pick-up', '1', '2')).toContain(
      'picked up 1 Oak chair, look over, photos, mark the joints and 2 Ash chair, look over',
    );
    expect(await shop.does('take-along', '3')).toContain('3 Elm chair taken along, look over');
    await shop.does('done', '2');
    expect(await shop.does('put-down')).toContain(
      'put down 1 Oak chair and 2 Ash chair and 3 Elm chair',
    );
    const minutes = await shop.json('hours', '2');
    expect(minutes).toMatchObject({ piece: { number: 2 } });
  });
});

const running = async (shop: Shop): Promise<readonly WindowJson[]> =>
  (await shop.json('bench')).rows[0]?.windows ?? [];

describe('adding a piece', () => {
  it('takes a name of several words and all that is known of it', async () => {
    const shop = openShop();
    await shop.does(
      ...['add', 'Hall', 'bench', '--schedule', 'Paint and wax', '--wood', 'softwood'],
      ...['--size', '10 sq ft', '--year', '1950', '--kind', 'bench', '--promised', '28 Nov'],
    );
    expect(await shop.json('steps', '1')).toMatchObject({
      piece: { name: 'Hall bench', number: 1 },
      schedule: { id: 'paint-and-wax' },
      wood: 'soft',
      // 0.09290304 m2 to the square foot (the international foot of 0.3048 m).
      areaM2: 0.93,
      yearMade: 1950,
      kind: 'bench',
      promised: '2026-11-28',
    });
  });

  it.each([
    [['--schedule', 'paint-and-w'], 0, ''],
    [[], 64, 'Not added: name its finishing schedule: --schedule ID. See: recoat schedules'],
    [
      ['--schedule', 'pant-and-wax'],
      2,
      'Not added: there is no finishing schedule "pant-and-wax". Nearest: paint-and-wax.',
    ],
    [
      ['--schedule', 'paint-and-w', '--size', '0.9 gallons'],
      64,
      'Not added: "0.9 gallons" is no size. Write 0.9 m2 or 10 sq ft.',
    ],
    [
      ['--schedule', 'paint-and-w', '--wood', 'pine'],
      64,
      'Not added: "pine" is no kind of wood here. Write soft or hard.',
    ],
    [
      ['--schedule', 'paint-and-w', '--year', 'old'],
      64,
      'Not added: "old" is no year. Write 1950.',
    ],
    [
      ['--schedule', 'paint-and-w', '--year', '2050'],
      1,
      'Not added: made in 2050? Give a year up to 2026.',
    ],
    [
      ['--schedule', 'paint-and-w', '--promised', '31 Nov'],
      64,
      'Not added: "31 Nov" is on no calendar. Write 28 Nov, 2026-11-28, Sat, tomorrow or in 3 days.',
    ],
  ])('with %j ends with %i', async (options, code, says) => {
    const shop = openShop();
    const done = await shop.run(['add', 'Hall bench', ...options]);
    expect({ code: done.code, err: done.err.trim() }).toEqual({ code, err: says });
    expect((await shop.json('bench')).rows).toHaveLength(code === 0 ? 1 : 0);
  });

  it('takes a size without a unit in square feet where the shop counts in inches', async () => {
    const shop = openShop();
    await shop.does('settings', 'lengths', 'in');
    await shop.does('add', 'Hall bench', '--schedule', 'paint-and-wax', '--size', '10');
    expect((await shop.json('steps', '1')).areaM2).toBe(0.93);
    await shop.does('settings', 'lengths', 'mm');
    await shop.does('describe', '1', '--size', '10');
    expect((await shop.json('steps', '1')).areaM2).toBe(10);
  });

  it('can be told more and less later', async () => {
    const shop = await withPiece('paint-and-wax');
    await shop.does('describe', '1', '--name', 'Oak coffer', '--size', '1,2', '--year', '1890');
    await shop.does('describe', 'Oak coffer', '--year', 'none', '--wood', 'none');
    expect(await shop.json('steps', '1')).toMatchObject({
      piece: { name: 'Oak coffer' },
      areaM2: 1.2,
      yearMade: null,
      wood: null,
    });
    expect(await shop.refuses('describe', '1')).toEqual({
      code: 1,
      says: 'Not noted: nothing was given to note.',
    });
  });
});

describe('the profile of a piece', () => {
  it('makes handwork longer, is told and taken away', async () => {
    const shop = await withPiece('bleach-and-clear');
    const minutes = async (id: string) =>
      (await shop.json('steps', '1')).steps.find((each) => each.id === id)?.estimate.minutes ?? 0;
    const [strip, bleach] = [await minutes('strip'), await minutes('bleach')];
    await shop.does('describe', '1', '--profile', 'turned 50%');
    expect(await shop.json('steps', '1')).toMatchObject({
      profile: { shape: 'turned', share: 0.5 },
    });
    expect((await minutes('strip')) / strip).toBeCloseTo(1.4, 6);
    expect(await minutes('bleach')).toBe(bleach);
    expect((await shop.refuses('describe', '1', '--profile', 'turnd')).says).toBe(
      'Not noted: "turnd" is no profile. Write flat, panels, turned or carved, or turned 30%. Nearest: turned.',
    );
    await shop.does('describe', '1', '--profile', 'none');
    expect(await minutes('strip')).toBe(strip);
  });
});

describe('what is counted on a piece', () => {
  it('makes steps longer, leaves them out at none, is told and taken away', async () => {
    const shop = await withPiece('bleach-and-clear');
    const off = async () =>
      (await shop.json('steps', '1')).steps.find((each) => each.id === 'hardware-off');
    const before = await off();
    await shop.does('describe', '1', '--fittings', '24', '--drawers', '5');
    expect(await shop.json('steps', '1')).toMatchObject({ fittings: 24, drawers: 5, joints: null });
    expect((await off())?.estimate.minutes).toBeCloseTo(3 * (before?.estimate.minutes ?? 0), 6);
    await shop.does('describe', '1', '--fittings', '0');
    expect(await off()).toMatchObject({ state: 'skipped' });
    expect(await shop.does('steps', '1')).toMatch(/hardware off.*no fittings/);
    expect((await shop.refuses('describe', '1', '--drawers', 'four')).says).toBe(
      'Not noted: "four" is no number of drawers. Write 8.',
    );
    expect((await shop.refuses('describe', '1', '--joints', '501')).says).toBe(
      "Not noted: 501 joints can't be; give a whole number up to 500.",
    );
    await shop.does('describe', '1', '--fittings', 'none');
    expect(await off()).toEqual(before);
  });
});

describe('work', () => {
  it('goes through a dwell by the stamp that is next, as the bench names it', async () => {
    const shop = await withPiece('bleach-and-clear');
    await comeTo(shop, 'bleach');
    const first = (await shop.json('bench')).rows[0]?.next;
    expect(await shop.does('next-stamp', '1')).toContain(first);
    const [window] = await running(shop);
    expect(window).toMatchObject({ kind: 'chemical', state: 'before' });
    shop.later(Date.parse(window?.opens ?? '') - shop.now());
    // So near its end that it is closing as soon as it opens.
    expect((await running(shop))[0]).toMatchObject({ state: 'closing' });
    const second = (await shop.json('bench')).rows[0]?.next;
    expect(second).not.toBe(first);
    expect(await shop.does('next-stamp', '1')).toContain(second);
  });

  it('is done for one part at a time', async () => {
    const shop = await withPiece('paint-and-wax');
    expect(await shop.does('parts', '1', 'case,', 'left', 'door,drawers')).toContain(
      'case, left door, drawers',
    );
    await shop.does('parts', '1', 'case', 'doors');
    const { steps } = await shop.json('steps', '1');
    await shop.does('pick-up', '1', '--part', 'case');
    await shop.does('done', '1', '--part', 'case');
    expect((await shop.json('steps', '1')).steps[0]?.state).not.toBe('done');
    await shop.does('done', '1', '--part', 'doors');
    expect((await shop.json('steps', '1')).steps[0]).toMatchObject({
      id: steps[0]?.id,
      state: 'done',
    });
    expect(await shop.refuses('parts', '1')).toMatchObject({ code: 64 });
    expect(await shop.refuses('parts', '1', '--none')).toMatchObject({
      code: 1,
      says: 'Not noted: case has work recorded on it; keep it in the list.',
    });
  });

  it('on several pieces in one go is shared out', async () => {
    const shop = await withPiece('paint-and-wax');
    await shop.does('add', 'Twin', '--schedule', 'paint-and-wax');
    await shop.does('add', 'Third', '--schedule', 'paint-and-wax');
    await shop.does('pick-up', '1', '--with', 'Twin', '--with', '3');
    shop.minutesLater(30);
    await shop.does('put-down');
    const { sessions } = await shop.json('sessions', '2');
    expect(sessions).toHaveLength(1);
    expect(sessions[0]?.minutes).toBeCloseTo(10, 6);
    expect(sessions[0]?.targets.map(({ piece }) => piece.name)).toEqual([
      'Oak chest',
      'Twin',
      'Third',
    ]);
  });

  it('that belongs to no step is told with --other', async () => {
    const shop = await withPiece('paint-and-wax');
    expect(await shop.does('pick-up', '1', '--other')).toContain('other work');
    expect(await shop.refuses('pick-up', '1', '--other', '--step', '2')).toMatchObject({
      code: 64,
    });
  });

  it('with a helper may be on two pieces, and the third asks which to put down', async () => {
    const shop = await withPiece('paint-and-wax');
    await shop.does('add', 'Twin', '--schedule', 'paint-and-wax');
    await shop.does('add', 'Third', '--schedule', 'paint-and-wax');
    await shop.does('settings', 'helper', 'yes');
    await shop.does('pick-up', '1');
    await shop.does('pick-up', '2');
    expect(await shop.refuses('pick-up', '3')).toEqual({
      code: 1,
      says: 'Not picked up: 1 Oak chest and 2 Twin are in hand. Name the one to put down for it: --put-down PIECE.',
    });
    await shop.does('pick-up', '3', '--put-down', '1');
    const held = (await shop.json('bench')).rows
      .filter(({ rank }) => rank === 'in hand')
      .map(({ piece }) => piece?.number);
    expect(held.sort()).toEqual([2, 3]);
    expect(await shop.refuses('pick-up', '1', '--put-down', '1')).toEqual({
      code: 1,
      says: 'Not picked up: Oak chest is not in hand.',
    });
  });

  it('that was forgotten is stamped outright', async () => {
    const shop = await withPiece('glue-up-repair');
    await comeTo(shop, 'reglue');
    expect(await shop.does('stamp', '1', 'in clamps')).toContain('in clamps');
    expect(await shop.refuses('stamp', '1', 'in-clmps')).toEqual({
      code: 64,
      says: 'Not stamped: there is no event "in-clmps". Nearest: in-clamps.',
    });
  });

  it('can be told to have been earlier or later', async () => {
    const shop = await withPiece('glue-up-repair');
    shop.minutesLater(30);
    await shop.does('pick-up', '1');
    shop.minutesLater(20);
    expect(await shop.does('earlier', '1', '12', 'min')).toContain('12 min earlier');
    expect(await shop.does('later', '1')).toContain('1 min later');
    expect((await shop.json('bench')).rows[0]?.inHandSince).toBe('2026-11-24T08:19:00.000-05:00');
    expect((await shop.refuses('earlier', '1', '90x')).code).toBe(64);
    expect((await shop.refuses('earlier', '1', '-5')).code).toBe(64);
  });
});

describe('trying the surface', () => {
  const withCoat = async (): Promise<Shop> => {
    const shop = await withPiece('bleach-and-clear');
    await comeTo(shop, 'coat, brushed');
    await shop.does('first-stroke', '1');
    shop.minutesLater(20);
    await shop.does('done', '1');
    await shop.does('put-down');
    return shop;
  };

  it('finds it not yet, and the window is held back', async () => {
    const shop = await withCoat();
    const before = (await running(shop))[0];
    shop.later(Date.parse(before?.opens ?? '') - shop.now());
    expect((await running(shop))[0]?.state).toBe('open');
    expect(await shop.does('not-yet', '1')).toMatch(/^not yet, .* on 1 Oak chest\n/);
    expect((await running(shop))[0]?.state).toBe('before');
    expect(await shop.does('ready', '1')).toMatch(/^ready, /);
  });

  it('finds trouble, and puts in what usually helps', async () => {
    const shop = await withCoat();
    shop.minutesLater(300);
    const before = (await shop.json('steps', '1')).steps.length;
    const asked = await shop.refuses('trouble', '1', '--put-in');
    expect(asked.code).toBe(64);
    const [, offered = ''] = /Nearest: (.*)\.$/.exec(asked.says) ?? [];
    const shown = offered.split(', ').find((name) => name.startsWith('runs')) ?? '';
    const said = await shop.does('trouble', '1', shown, '--put-in');
    expect(said).toMatch(/trouble, .* on 1 Oak chest; [1-9] steps? put in/);
    expect((await shop.json('steps', '1')).steps.length).toBeGreaterThan(before);
    await shop.does('take-back');
    expect((await shop.json('steps', '1')).steps).toHaveLength(before);
    expect(await shop.refuses('trouble', '1', 'sings', '--put-in')).toMatchObject({ code: 2 });
  });

  it('says what usually helps against a known trouble, and leaves the steps alone', async () => {
    const shop = await withCoat();
    const { steps } = await shop.json('steps', '1');
    const { code, out, err } = await shop.run(['trouble', '1', 'runs']);
    expect(code).toBe(0);
    expect(out).toMatch(/^trouble, /);
    expect(err).toMatch(/What usually helps: .+\. With --put-in it comes into the steps\./);
    expect((await shop.json('steps', '1')).steps).toHaveLength(steps.length);
  });

  it('finds trouble in words that are no list', async () => {
    const shop = await withCoat();
    expect(await shop.does('trouble', '1', 'a', 'fly', 'in', 'it')).not.toContain('usually helps');
    const { rows } = await shop.json('job-card', '1');
    expect(rows.find(({ row }) => row === 'check')).toMatchObject({
      finding: 'trouble',
      shown: 'a fly in it',
    });
  });

  it('is refused where there is nothing to try', async () => {
    const shop = await withPiece('bleach-and-clear');
    for (const line of [['ready'], ['not-yet'], ['trouble'], ['trouble', '--put-in']]) {
      const [name = '', ...more] = line;
      expect(await shop.refuses(name, '1', ...more)).toEqual({
        code: 1,
        says: 'Not noted: nothing on 1 Oak chest is drying or setting, so there is nothing to try.',
      });
    }
  });
});

describe('an odd timer', () => {
  it('runs by itself or for a piece, and is closed by its label', async () => {
    const shop = await withPiece('glue-up-repair');
    await shop.does('timer', 'clamps', '35', 'min');
    await shop.does('timer', 'tea', '1:20', '--piece', '1');
    const { rows } = await shop.json('bench');
    expect(rows.map(({ timer }) => timer?.label ?? null)).toEqual(
      expect.arrayContaining(['clamps', null]),
    );
    const clamps = rows.find(({ timer }) => timer !== null);
    expect(clamps?.window?.opens).toBe('2026-11-24T08:35:00.000-05:00');
    expect(await shop.does('close-timer', 'clam')).toContain('clamps closed');
    expect(await shop.refuses('close-timer', 'clamps')).toMatchObject({ code: 2 });
  });

  it.each(['-5', '90x', '1:99', '0', '400 d'])('does not run for %j', async (length) => {
    const shop = openShop();
    const { code, says } = await shop.refuses('timer', 'clamps', length);
    expect(code).toBe(64);
    expect(says).toMatch(/^Not started: .*Write 35, 35 min, 1:20, 2 h or 3 d\.$/);
    expect((await shop.json('bench')).rows).toEqual([]);
  });
});

describe('a hold', () => {
  it('has a reason and a day on which to ask, and is lifted', async () => {
    const shop = await withPiece('glue-up-repair');
    await shop.does('hold', '1', 'hinge', 'plates', '--ask', 'Thu');
    expect((await shop.json('bench')).rows[0]?.hold).toEqual({
      reason: 'hinge plates',
      since: '2026-11-24T08:00:00.000-05:00',
      askAgain: '2026-11-26',
    });
    expect(await shop.does('bench')).toContain('hold: hinge plates');
    await shop.does('lift', '1');
    expect((await shop.json('bench')).rows[0]?.hold).toBeNull();
    expect((await shop.refuses('hold', '1', 'x', '--ask', '11/12')).code).toBe(64);
    expect((await shop.refuses('lift', '1')).code).toBe(1);
  });
});
