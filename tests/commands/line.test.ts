import { describe, expect, it } from 'vitest';
import { commands } from '../../src/commands/line/table.ts';
import { openShop } from './support/shop.ts';

describe('the command line', () => {
  it('tells its version', async () => {
    expect(await openShop().run(['--version'])).toEqual({ code: 0, out: '1.2.3\n', err: '' });
  });

  it.each([['--help'], ['-h'], ['help']])('lists every command with %s', async (word) => {
    const { code, out } = await openShop().run([word]);
    expect(code).toBe(0);
    for (const [name, { summary }] of Object.entries(commands)) {
      expect(out).toContain(`  ${name.padEnd(18)}${summary}\n`);
    }
  });

  it.each(Object.keys(commands))('has a page that tells what %s takes', async (name) => {
    const file = await commands[name]?.load();
    const { code, out, err } = await openShop().run([...name.split(' '), '--help']);
    // Terminals break longer lines in the middle of a word.
    for (const each of out.split('\n')) expect(each.length).toBeLessThanOrEqual(80);
    expect(out).not.toMatch(/options:\n\n/);
    expect({ code, err }).toEqual({ code: 0, err: '' });
    expect(out).toMatch(new RegExp(`^recoat ${name}.* \\[options\\]\n`));
    for (const [flags] of file?.options ?? []) expect(out).toContain(`  ${flags} `);
    expect(await openShop().run(['help', ...name.split(' ')])).toEqual({ code, out, err });
  });

  it.each([
    [['bensh'], 'there is no command "bensh". See: recoat --help Nearest: bench.'],
    [['bench', '--jsno'], 'there is no option --jsno. See: recoat bench --help Nearest: --json.'],
    [['--jsno'], 'there is no option --jsno. See: recoat --help Nearest: --json.'],
    [['bench', '-x'], 'there is no option -x. See: recoat bench --help'],
    [['pick-up'], 'the piece is missing. See: recoat pick-up --help'],
    [['note', '1'], 'the text is missing. See: recoat note --help'],
    [['bench', 'oak'], 'it takes no "oak". See: recoat bench --help'],
    [
      ['done', 'Oak', 'chest'],
      '"chest" is a word too many; put quotes around a name of several words. See: recoat done --help',
    ],
    [['done', '1', '--at'], '--at lacks its value: --at <time>. See: recoat done --help'],
    [['done', '1', '--at', '--json'], '--at lacks its value: --at <time>. See: recoat done --help'],
    [['bench', '--json=yes'], '--json takes no value. See: recoat bench --help'],
    [
      ['bench', '--zone', 'Europe/Lisbn'],
      'there is no zone "Europe/Lisbn". Nearest: Europe/Lisbon, Europe/Kiev, Europe/Kirov.',
    ],
  ])('does not understand %j', async (line, says) => {
    const { code, out, err } = await openShop().run(line);
    expect({ code, err }).toEqual({ code: 64, err: `Not understood: ${says}\n` });
    expect(out === '').toBe(!line.includes('--json'));
  });

  it('takes the options of every command before its name as well as after', async () => {
    const shop = openShop();
    const after = await shop.does('bench', '--json', '--zone', 'UTC');
    expect(await shop.does('--json', '--zone', 'UTC', 'bench')).toBe(after);
    expect(await shop.does('--zone=UTC', 'bench', '--json')).toBe(after);
    expect(JSON.parse(after)).toMatchObject({ at: '2026-11-24T19:29:00.000+00:00' });
  });

  it('takes what comes after two dashes as words', async () => {
    const shop = openShop();
    await shop.does('add', '--schedule', 'glue-up-repair', '--', '--json');
    expect((await shop.json('bench')).rows[0]?.piece?.name).toBe('--json');
  });

  it('answers as JSON also where it does nothing, and says so on the other stream too', async () => {
    const shop = openShop();
    await shop.does('add', 'Oak chest', '--schedule', 'glue-up-repair');
    const { code, out, err } = await shop.run(['pick-up', 'Oka chest', '--json']);
    expect(code).toBe(2);
    expect(JSON.parse(out)).toEqual({
      refused: 'Not picked up: there is no piece "Oka chest".',
      nearest: ['1 Oak chest'],
    });
    expect(err).toBe('Not picked up: there is no piece "Oka chest". Nearest: 1 Oak chest.\n');
  });

  it('keeps its store where --folder says, counted from where it was started', async () => {
    const shop = openShop();
    await shop.does('add', 'Oak chest', '--schedule', 'glue-up-repair', '--folder', 'elsewhere');
    expect(await shop.does('bench')).toContain('The bench is empty.');
    expect(await shop.does('bench', '--folder', `${shop.root}/elsewhere`)).toContain('Oak chest');
  });

  it('makes no folder by looking', async () => {
    const shop = openShop();
    for (const line of [['bench'], ['hours'], ['past'], ['pings'], ['settings'], ['windows']])
      await shop.does(...line);
    const { existsSync } = await import('node:fs');
    expect(existsSync(shop.folder)).toBe(false);
  });
});
