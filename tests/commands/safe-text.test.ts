import { describe, expect, it } from 'vitest';
import { must } from './support/must.ts';
import { openShop, type Shop } from './support/shop.ts';

/** Everything that a terminal would act on: escape, a control of the upper set, a bell, a line break, a turned reading order. */
const nasty = 'Oak\u001b[31m\u009b2J\u0007\n\u202echest';

/** What may stand in a line of text: nothing that acts, and no line break but the last. */
// eslint-disable-next-line no-control-regex -- the point is to find them
const acting = /[\u0000-\u0009\u000b-\u001f\u007f-\u009f\u2028-\u202e\u2066-\u2069]/;

const withNastyPiece = async (): Promise<Shop> => {
  const shop = openShop({ now: '2026-11-24T08:00:00-05:00' });
  await shop.does('add', nasty, '--schedule', 'glue-up-repair', '--kind', nasty);
  await shop.does('parts', '1', nasty, 'legs');
  await shop.does('insert-step', '1', nasty);
  await shop.does('note', '1', nasty);
  await shop.does('hold', '1', nasty);
  await shop.does('timer', nasty, '5 min');
  await shop.does('pick-up', '1', '--part', nasty);
  shop.minutesLater(20);
  await shop.does('done', '1', '--part', nasty);
  await shop.does('put-down');
  return shop;
};

const looks: readonly (readonly string[])[] = [
  ['bench'],
  ['windows'],
  ['steps', '1'],
  ['hours'],
  ['hours', '1'],
  ['job-card', '1'],
  ['sessions', '1'],
  ['pings'],
  ['overnight'],
  ['settings'],
  ['keys'],
  ['schedules'],
  ['conditions'],
];

describe('text', () => {
  it('never acts on the terminal, whatever was typed', async () => {
    const shop = await withNastyPiece();
    for (const line of looks) {
      const text = await shop.does(...line);
      expect(text.match(acting), line.join(' ')).toBeNull();
    }
    expect(await shop.does('bench')).toContain('Oak\\x1b[31m\\x9b2J\\x07\\x0a\\u202echest');
    await shop.does('off-bench', '1');
    expect((await shop.does('past')).match(acting)).toBeNull();
    expect((await shop.does('job-card', nasty)).match(acting)).toBeNull();
  });

  it('of a refusal neither', async () => {
    const shop = await withNastyPiece();
    const lines = [
      ['pick-up', '\u001b]0;x\u0007'],
      ['pick-up', '1', '--step', '\u009b'],
      ['\u001b[2J'],
      ['bench', '--\u001b[2J'],
      ['add', 'x', '--schedule', '\u001b[2J'],
      ['settings', '\u001b[2J', 'x'],
      ['conditions', '\u001b[2J'],
      ['schedules', 'check', '\u001b[2J'],
      ['bench', '--zone', '\u001b[2J'],
    ];
    for (const line of lines) {
      const { code, out, err } = await shop.run(line);
      expect(code, line.join(' ')).toBeGreaterThan(0);
      expect((out + err).match(acting), line.join(' ')).toBeNull();
    }
  });

  it('as JSON neither, and reads back as it was', async () => {
    const shop = await withNastyPiece();
    for (const line of looks) {
      const text = await shop.does(...line, '--json');
      expect(text.match(acting), line.join(' ')).toBeNull();
      expect(text.split('\n')).toHaveLength(2);
    }
    const { rows } = await shop.json('bench');
    const piece = rows.find((row) => row.piece !== null);
    expect(piece?.piece?.name).toBe(nasty);
  });
});

describe('JSON', () => {
  const instant = /^\d{4}-\d{2}-\d{2}T\d{2}:\d{2}:\d{2}\.\d{3}[+-]\d{2}:\d{2}$/;

  /** Every value with the way to it. */
  function* values(value: unknown, way = ''): Generator<readonly [string, unknown]> {
    yield [way, value];
    if (Array.isArray(value)) for (const each of value) yield* values(each, `${way}[]`);
    else if (value !== null && typeof value === 'object')
      for (const [name, each] of Object.entries(value)) yield* values(each, `${way}.${name}`);
  }

  const instantNames =
    /\.(at|begun|opens|closes|begins|ends|since|inHandSince|readAt|start|end|added|left|backAt|seen|trimTo|movedFrom|foundReady|closed|lifted)$/;

  it('tells every instant with its offset, and depends on nothing of the locale', async () => {
    const shop = await withNastyPiece();
    await shop.does('conditions', '19C 55%');
    const plain = new Map<string, string>();
    for (const line of looks) {
      plain.set(line.join(' '), await shop.does(...line, '--json'));
      for (const [way, value] of values(JSON.parse(plain.get(line.join(' ')) ?? ''))) {
        if (instantNames.test(way) && typeof value === 'string' && way !== '.fallsDue[].ends')
          expect(value, way).toMatch(instant);
      }
    }
    for (const [name, value] of [
      ['clock', '12'],
      ['temperature', 'F'],
      ['lengths', 'in'],
    ] as const)
      await shop.does('settings', name, value);
    for (const line of looks.filter(([name]) => name !== 'settings'))
      expect(await shop.does(...line, '--json'), line.join(' ')).toBe(plain.get(line.join(' ')));
  });

  it('has the same fields in every row, whatever is known', async () => {
    const shop = await withNastyPiece();
    await shop.does('add', 'Plain', '--schedule', 'bleach-and-clear');
    const { rows } = await shop.json('bench');
    expect(rows).toHaveLength(3);
    for (const row of rows) expect(Object.keys(row)).toEqual(Object.keys(must(rows[0])));
    const { windows } = await shop.json('windows');
    for (const window of windows)
      expect(Object.keys(window)).toEqual(Object.keys(must(windows[0])));
    const { steps } = await shop.json('steps', '1');
    for (const step of steps) expect(Object.keys(step)).toEqual(Object.keys(must(steps[0])));
  });
});
