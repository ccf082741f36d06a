import { chmodSync, mkdirSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it, onTestFinished } from 'vitest';
import {
  isKeeperPresent,
  leaveKeeperMark,
  presentAsKeeper,
  presentAsScreen,
} from '../../src/persist/presence/index.ts';
import { fakeCommands, setVariable } from '../shell/ping/support/fake-commands.ts';
import { openShop, type Shop } from './support/shop.ts';

const working = { 'notify-send': 'echo "$@" >> "$HERE/sent"', 'systemd-inhibit': 'exec cat' };

/** A shop on a machine where everything is as it should be. */
async function goodShop(scripts: Readonly<Record<string, string>> = working) {
  const fakes = fakeCommands(scripts);
  const shop = openShop({
    env: { PATH: fakes.bin + (scripts === working ? ':/bin:/usr/bin' : '') },
  });
  await shop.does('add', 'Oak chest', '--schedule', 'glue-up-repair');
  await shop.does('note', '1', 'a second change makes a backup');
  return { shop, fakes };
}

async function looked(shop: Shop, ...words: readonly string[]) {
  const { code, out, err } = await shop.run(['checkup', ...words, '--json']);
  if (out === '') throw new Error(err);
  const { findings, wrong } = JSON.parse(out) as Awaited<ReturnType<typeof shop.json<'checkup'>>>;
  expect(code).toBe(wrong === 0 ? 0 : 1);
  return {
    wrong: findings.filter(({ state }) => state === 'wrong'),
    about: (name: string) => findings.filter(({ about }) => about === name),
  };
}

const wrongWith = async (shop: Shop, ...words: readonly string[]) =>
  (await looked(shop, ...words)).wrong.map(
    ({ about, says, todo }) => `${about}: ${says} ${todo ?? ''}`,
  );

describe('a checkup', () => {
  it('finds nothing wrong where nothing is, and says so of each part', async () => {
    const { shop } = await goodShop();
    expect(await wrongWith(shop)).toEqual([]);
    const { about } = await looked(shop);
    for (const part of [
      'store',
      'lock',
      'backups',
      'folder',
      'keeper',
      'notifier',
      'awake',
      'terminal',
      'clock',
      'schedules',
    ])
      expect(about(part), part).not.toEqual([]);
    expect(about('store')[0]?.says).toMatch(/^bench\.json: 2 facts, and its sum is right/);
    expect(about('backups')[0]?.says).toMatch(/^One backup; .* reads: 1 facts/);
    const text = await shop.does('checkup');
    expect(text).toContain('Nothing is wrong.');
    for (const line of text.split('\n')) expect(line.length).toBeLessThanOrEqual(80);
  });

  it('changes nothing, also of what is damaged', async () => {
    const { shop } = await goodShop();
    writeFileSync(join(shop.folder, 'bench.json'), 'x');
    const all = () =>
      readdirSync(shop.folder, { recursive: true, encoding: 'utf8' })
        .filter((name) => name.endsWith('.json'))
        .map((name) => [name, readFileSync(join(shop.folder, name), 'latin1')]);
    const before = all();
    await looked(shop);
    expect(all()).toEqual(before);
  });

  it('in an empty place says that nothing was recorded, and names a folder that is mistyped', async () => {
    const fakes = fakeCommands(working);
    const shop = openShop({ env: { PATH: `${fakes.bin}:/bin:/usr/bin` } });
    expect((await looked(shop)).about('store')[0]?.says).toContain('nothing was recorded');
    expect((await shop.refuses('checkup', '--folder', 'nowhere')).code).toBe(3);
  });
});

describe('of the store', () => {
  it.each([
    [
      'bench.json',
      'x',
      /bench\.json is damaged: it is not JSON\. Any other command .*bench\.prev\.json/,
    ],
    ['bench.json', '', /bench\.json is damaged: it is empty/],
    ['bench.json', '{"recoat":9,"facts":[]}', /written by a newer recoat/],
    [
      'bench.json',
      '{"recoat":1,"facts":[{"id":"a","kind":"eaten"}]}',
      /line 1: fact 1: kind is "eaten"/,
    ],
    ['pings.json', '{"recoat":1}', /pings\.json is damaged: "facts" is missing/],
    ['bench.prev.json', 'x', /bench\.prev\.json, the generation before, can't be read/],
    ['history/2025.json', 'x', /history\/2025\.json is damaged.*no earlier copy/],
    ['settings.json', '{"recoat":1,"settings":{"clok":"12"}}', /"clok" is no setting.*clock/],
  ])('%s with %j', async (name, text, says) => {
    const { shop } = await goodShop();
    mkdirSync(join(shop.folder, 'history'), { recursive: true });
    writeFileSync(join(shop.folder, name), text);
    expect(await wrongWith(shop)).toEqual([expect.stringMatching(says)]);
  });

  it('a file that is gone, and one that another hand wrote', async () => {
    const { shop } = await goodShop();
    const path = join(shop.folder, 'bench.json');
    const text = readFileSync(path, 'utf8');
    writeFileSync(path, text.replace(/,"sum":"\w+"/, ''));
    expect((await looked(shop)).about('store')[0]).toMatchObject({
      state: 'note',
      says: expect.stringContaining('Another hand wrote it') as string,
    });
    rmSync(path);
    expect(await wrongWith(shop)).toEqual([expect.stringContaining('bench.json is missing')]);
  });
});

describe('of the lock and backups', () => {
  it('names the process that keeps the store locked', async () => {
    const { shop } = await goodShop();
    const { spawn } = await import('node:child_process');
    const holder = spawn(process.execPath, [
      '-e',
      `const { DatabaseSync } = require('node:sqlite');
       new DatabaseSync(process.argv[1]).exec('BEGIN IMMEDIATE');
       console.log('held'); setInterval(() => {}, 1000);`,
      join(shop.folder, 'lock.sqlite'),
    ]);
    onTestFinished(() => void holder.kill('SIGKILL'));
    await new Promise((resolve) => holder.stdout.once('data', resolve));
    const [wrong = ''] = await wrongWith(shop);
    expect(wrong).toMatch(/^lock: The store has been locked for a second by /);
    if (process.platform === 'linux') expect(wrong).toContain(`process ${String(holder.pid)}.`);
  });

  it('a lock file that is none, and what a dead process left', async () => {
    const { shop } = await goodShop();
    writeFileSync(
      join(shop.folder, 'lock.sqlite'),
      'no database, and long enough to be looked at as one'.repeat(20),
    );
    writeFileSync(join(shop.folder, 'bench.json.part'), '');
    const { wrong, about } = await looked(shop);
    expect(wrong.map(({ says }) => says)).toEqual([expect.stringContaining('is damaged')]);
    expect(about('lock').at(-1)?.says).toContain('bench.json.part');
  });

  it('a newest backup that does not read, and one that is too old', async () => {
    const { shop } = await goodShop();
    const [name = ''] = readdirSync(join(shop.folder, 'backups'));
    writeFileSync(join(shop.folder, 'backups', name), '{');
    expect(await wrongWith(shop)).toEqual([
      expect.stringMatching(/^backups: .*can't be read: it is not JSON/),
    ]);
    const { shop: later } = await goodShop();
    later.minutesLater(7 * 24 * 60);
    // Where a file stands in the place of the backups none can be made.
    rmSync(join(later.folder, 'backups'), { recursive: true });
    mkdirSync(join(later.folder, 'backups'));
    writeFileSync(
      join(later.folder, 'backups', 'bench-2026-11-20.json'),
      readFileSync(join(later.folder, 'bench.json')),
    );
    expect(await wrongWith(later)).toEqual([
      expect.stringContaining('no backup was made of it since'),
    ]);
  });
});

describe('of the folder', () => {
  it('others who may read it, and a program that keeps it alike elsewhere', async () => {
    const { shop } = await goodShop();
    chmodSync(shop.folder, 0o755);
    chmodSync(join(shop.folder, 'bench.json'), 0o644);
    mkdirSync(join(shop.folder, '.stfolder'));
    expect(await wrongWith(shop)).toEqual([
      expect.stringMatching(/^folder: Others on this machine can read .*bench\.json.*chmod -R go=/),
      expect.stringContaining('recoat export'),
    ]);
  });

  it('a disk that is nearly full', async () => {
    const { examineFolder } = await import('../../src/persist/checkup/index.ts');
    const { shop } = await goodShop();
    const [finding] = examineFolder(shop.folder, {
      freeBytes: () => 3 * 1024 * 1024,
      isSynced: () => false,
    });
    expect(finding).toMatchObject({ state: 'wrong' });
    expect(finding?.says).toContain('Only 3 MB are free');
  });
});

describe('of the keeper', () => {
  it('one that died, one that is wanted and not there, and one that is there', async () => {
    const { shop } = await goodShop();
    await shop.does('timer', 'clamps', '35min');
    expect((await looked(shop)).about('keeper')[0]).toMatchObject({ state: 'note' });
    await shop.does('settings', 'keeper', 'yes');
    expect(await wrongWith(shop)).toEqual([
      expect.stringMatching(
        /^keeper: A keeper is wanted and none is there; the next ping is to come 15:0/,
      ),
    ]);
    leaveKeeperMark(shop.folder, { pid: 2 ** 22 + 1, began: shop.now() });
    expect(await wrongWith(shop)).toEqual([expect.stringContaining('was ended from outside')]);
    const keeper = presentAsKeeper(shop.folder);
    expect(isKeeperPresent(shop.folder)).toBe(true);
    expect((await looked(shop)).about('keeper')[0]).toMatchObject({ state: 'in order' });
    keeper?.leave();
    rmSync(join(shop.folder, 'keeper.json'));
    const screen = presentAsScreen(shop.folder);
    expect((await looked(shop)).about('keeper')[0]?.says).toContain('A screen is open');
    screen?.leave();
  });
});

describe('of what pings', () => {
  it.runIf(process.platform === 'linux')(
    'a notifier and an inhibitor that are missing',
    async () => {
      const { shop } = await goodShop({});
      expect(await wrongWith(shop)).toEqual([
        expect.stringMatching(/^notifier: .*notify-send is missing.*libnotify-bin/),
        expect.stringMatching(/^awake: This machine may sleep.*systemd-inhibit is missing/),
      ]);
      await shop.does('settings', 'desktop', 'no');
      await shop.does('settings', 'awake', 'no');
      expect(await wrongWith(shop)).toEqual([]);
    },
  );

  it.runIf(process.platform === 'linux')('one that fails when it is really tried', async () => {
    const { shop, fakes } = await goodShop();
    setVariable('PATH', fakes.path);
    expect(await wrongWith(shop, '--ping')).toEqual([]);
    expect(fakes.read('sent')).toContain('recoat: checkup');
    const broken = fakeCommands({ 'notify-send': 'echo no service >&2; exit 1' });
    setVariable('PATH', broken.path);
    expect(await wrongWith(shop, '--ping')).toEqual([
      expect.stringMatching(/^notifier: No desktop notification: /),
    ]);
  });

  it('a hook that is gone, and one that fails', async () => {
    const fakes = fakeCommands({ ...working, hook: 'cat > "$HERE/heard"', bad: 'exit 3' });
    const shop = openShop({ env: { PATH: `${fakes.bin}:/bin:/usr/bin` } });
    setVariable('PATH', fakes.path);
    await shop.does('settings', 'ping-hook', join(fakes.bin, 'nothing'));
    expect(await wrongWith(shop)).toEqual([
      expect.stringMatching(/^hook: The ping hook .*nothing is not there/),
    ]);
    await shop.does('settings', 'ping-hook', join(fakes.bin, 'hook'));
    expect(await wrongWith(shop, '--ping')).toEqual([]);
    expect(fakes.read('heard')).toContain('"ping":"checkup"');
    await shop.does('settings', 'ping-hook', join(fakes.bin, 'bad'));
    expect(await wrongWith(shop)).toEqual([]);
    expect(await wrongWith(shop, '--ping')).toEqual([
      expect.stringMatching(/^hook: No ping by the hook/),
    ]);
  });
});

describe('of terminal, clock and schedules', () => {
  it('a terminal that is too small, one that is dumb, one without UTF-8', async () => {
    const { checkTerminal } = await import('../../src/shell/checkup/index.ts');
    const { standardSettings } = await import('../../src/tracker/settings/index.ts');
    const states = (columns: number, rows: number, env: Record<string, string> = {}) =>
      checkTerminal({ size: { columns, rows }, env }, standardSettings).map(({ state }) => state);
    expect(states(80, 24, { LANG: 'en_US.UTF-8' })).toEqual(['in order', 'in order']);
    expect(states(60, 24)).toEqual(['note', 'in order']);
    expect(states(31, 24)[0]).toBe('wrong');
    expect(states(80, 9)[0]).toBe('wrong');
    expect(states(80, 24, { TERM: 'dumb' })).toEqual(['wrong']);
    expect(states(80, 24, { LANG: 'C' })).toEqual(['in order', 'note']);
    expect(checkTerminal({ size: null, env: {} }, standardSettings)[0]?.state).toBe('note');
  });

  it('a clock that stands before what was told, and settings of it', async () => {
    const { shop } = await goodShop();
    shop.minutesLater(-24 * 60);
    expect(await wrongWith(shop)).toEqual([
      expect.stringMatching(/^clock: The clock shows .*was told /),
    ]);
    const { checkClock } = await import('../../src/shell/checkup/index.ts');
    const told = (at: number, uptimeMs: number) =>
      ({ id: `f${uptimeMs}`, at, told: at, uptimeMs, bootId: 'b' }) as never;
    const day = 24 * 3_600_000;
    const found = checkClock({
      clock: { now: () => 10, uptime: () => null, bootId: null },
      now: 10,
      // Two processes noticed the first setting, nobody the second.
      facts: [told(0, 0), told(-day, 1), told(-day + 1, 2), told(5, 3)],
      zone: 'auto',
      machineZone: undefined,
      tell: String,
    });
    expect(found.map(({ state }) => state)).toEqual(['note', 'wrong', 'note']);
    expect(found[0]?.says).toContain('set 2 times, the last time 5');
  });

  it('nothing wrong with a clock that was set back in the view of what was told before', async () => {
    const { checkClock } = await import('../../src/shell/checkup/index.ts');
    const day = 24 * 3_600_000;
    const told = (at: number, uptimeMs: number) =>
      ({ id: `f${uptimeMs}`, at, told: at, uptimeMs, bootId: 'b' }) as never;
    const found = checkClock({
      clock: { now: () => day + 5, uptime: () => 5, bootId: 'b' },
      now: day + 5,
      facts: [told(3 * day, 0), told(3 * day + 1, 1)],
      zone: 'auto',
      machineZone: 'Europe/Lisbon',
      tell: String,
    });
    expect(found.map(({ state }) => state)).toEqual(['in order', 'note']);
    expect(found[1]?.says).toContain(`set once, the last time ${day + 5}`);
  });

  it('a schedule with a mistake, and one that replaces', async () => {
    const { shop } = await goodShop();
    await shop.does('schedules', 'copy', 'paint-and-wax');
    expect((await looked(shop)).about('schedules')[0]).toMatchObject({ state: 'note' });
    writeFileSync(join(shop.folder, 'schedules', 'mine.yaml'), 'id: mine\nnaem: x\n');
    const wrong = await wrongWith(shop);
    expect(wrong.length).toBeGreaterThan(0);
    for (const says of wrong) expect(says).toMatch(/^schedules: .*mine\.yaml, line \d/);
  });
});
