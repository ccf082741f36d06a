import { describe, expect, it } from 'vitest';
import { diagnosticsFile } from '../../../src/shell/ping/diagnostics.ts';
import { pingsScreen } from '../../../src/views/pings/index.ts';
import { logFile } from '../../../src/views/pings/ping-log.ts';
import type { Snapshot } from '../../../src/views/port.ts';
import type { PingsState } from '../../../src/views/screens.ts';
import {
  afternoon,
  at,
  Facts,
  key,
  ping,
  portOf,
  rowsOf,
  sizes,
  snapshotOf,
  tense,
  viewOf,
  withSettings,
  type Size,
} from '../support/bench-of.ts';

const start: PingsState = { is: 'pings', from: 0 };
const bench = afternoon().bench();
const now = at('24 14:29');

const log = [
  ping('a', '23 23:00', '2 Wall shelf: B on, by 23:02, 2 min left. Late: rinse, dry, start over.', {
    loud: true,
    seenAt: at('24 07:40'),
    ways: ['screen', 'bell'],
    failures: ['desktop: notify-send is missing. Install it.'],
  }),
  ping('b', '24 10:40', '2 Plant stand: try it, till 18:30', { seenAt: at('24 11:02') }),
  ping('c', '24 12:55', '1 Oak settle: rinse dry', { ways: null }),
];

const viewWith = (more: Partial<Snapshot>, size: Size = [80, 24], moment = now) =>
  viewOf(snapshotOf(bench, more), moment, size, {
    pingWays: { desktop: true, says: 'Pings: desktop yes, bell yes.' },
  });

const drawn = (more: Partial<Snapshot>, size?: Size, state = start): readonly string[] =>
  rowsOf(pingsScreen.draw(state, viewWith(more, size)));

describe('the log of pings', () => {
  it.each(sizes)('fits %i x %i', (columns, rows) => {
    const shown = drawn({ pings: log }, [columns, rows]);
    expect(shown).toHaveLength(rows);
    for (const row of shown) expect(row.length).toBeLessThanOrEqual(columns);
  });

  it('shows the last one first: when, what, by which ways, when seen', () => {
    const text = drawn({ pings: log }).join('\n');
    expect(text).toContain(
      [
        'went out, the last one first',
        '   12:55        1 Oak settle: rinse dry',
        '                Not known whether it went out: recoat ended while sending it',
        '   10:40        2 Plant stand: try it, till 18:30',
        '                by desktop, bell; seen 11:02',
        '!! 23:00 Mon    2 Wall shelf: B on, by 23:02, 2 min left. Late: rinse, dry,',
        '                start over.',
        '                by screen, bell; desktop: notify-send is missing; seen 07:40',
      ].join('\n'),
    );
  });

  it('says of a loud one that no key has silenced it', () => {
    const loud = ping('d', '24 14:28', '2 Wall shelf: B on', { loud: true });
    const quiet = ping('e', '24 14:27', '3 Beech stool: try it');
    const text = drawn({ pings: [quiet, loud] }).join('\n');
    expect(text).toContain('by desktop, bell; no key has silenced it');
    expect(text).toMatch(/by desktop, bell$/m);
  });

  it('tells what is still to come till noon, in the words in which it will go out', () => {
    const rows = drawn({});
    expect(rows.slice(2, 10)).toEqual([
      'to come till Wed 12:00',
      '   15:10        3 Beech stool: try it, till 23:00, 7 h 50 left',
      '   15:20        4 Side table: clamps off since 15:20',
      '   18:00        2 Plant stand: try it, till 18:30, 30 min left',
      '   18:30        2 Plant stand: scuff 320 first, closed 18:30',
      '   22:30        3 Beech stool: try it, till 23:00, 30 min left',
      '   23:00        3 Beech stool: scuff 320 first, closed 23:00',
      '   08:55 Wed    5 Garden bench: try it since 08:55',
    ]);
    expect(rows.join('\n')).toContain('  None so far.');
  });

  it('marks what will be loud', () => {
    const view = viewOf(snapshotOf(tense().bench()), at('12-03 16:31'));
    const text = rowsOf(pingsScreen.draw(start, view)).join('\n');
    expect(text).toContain('!! 16:40        2 Wall shelf: B on, by 16:42, 2 min left');
    expect(text).toContain('   16:37        2 Wall shelf: B on at 16:40, in 3 min');
  });

  it('says so where nothing is to come', () => {
    const view = viewOf(snapshotOf(new Facts().bench()), now);
    expect(rowsOf(pingsScreen.draw(start, view)).slice(2, 4)).toEqual([
      'to come till Wed 12:00',
      '  None.',
    ]);
  });

  it('says who tells what is to come while recoat is closed', () => {
    const settings = withSettings({ keeper: 'yes' });
    const nobody = 'While recoat is closed none of these goes out.';
    const keeper = 'While recoat is closed the keeper pings these.';
    for (const more of [{}, { settings }, { keeper: 'none' as const }])
      expect(drawn(more)).toContain(nobody);
    // One that stands by pings whoever started it.
    for (const more of [{ settings, keeper: 'none' as const }, { keeper: 'there' as const }]) {
      expect(drawn(more)).toContain(keeper);
      expect(drawn(more)).not.toContain(nobody);
    }
  });

  it('explains a ping that was missed: ways, waking, and the file that has it all', () => {
    const text = drawn(
      {
        folder: '/data/shop',
        awake: {
          kept: false,
          says: 'The machine may fall asleep: nothing here can keep it awake.',
          closing: 'Lid: no pings if this closes.',
        },
      },
      [120, 36],
    ).join('\n');
    expect(text).toContain('Pings: desktop yes, bell yes.');
    expect(text).toContain('The machine may fall asleep: nothing here can keep it awake.');
    expect(text).toContain('Lid: no pings if this closes.');
    expect(text).toContain(`All of it: ${diagnosticsFile} in /data/shop`);
    expect(logFile).toBe(diagnosticsFile);
  });
});

describe('what was noticed in this run', () => {
  const notices = [
    'bench.json was damaged.',
    'No desktop ping: the command notify-send is missing. Install libnotify-bin (Debian and relatives) or libnotify (most others). Pings still ring the bell and stand on the screen.',
    '/home/bench/clouds/a-folder-with-a-very-long-name-of-its-own/recoat looks like a synced folder.',
  ];
  /** The rows under its heading, till the next empty one, as one text. */
  const noticed = (size: Size): string => {
    const rows = drawn({ notices, pings: log }, size);
    const from = rows.indexOf('noticed, the last one first');
    expect(from).toBeGreaterThan(0);
    return rows
      .slice(from + 1, rows.indexOf('', from))
      .map((row) => row.trim())
      .join(' ');
  };

  it('is told in full, the last one first, between what is to come and what went out', () => {
    expect(noticed([80, 40])).toBe(notices.toReversed().join(' '));
    const text = drawn({ notices, pings: log }, [80, 60]).join('\n');
    expect(text).toMatch(/to come till[^]*noticed, the last one first[^]*went out, the last one/);
  });

  it('cuts nothing off a word that is longer than a narrow row', () => {
    expect(noticed([40, 60]).replaceAll(' ', '')).toBe(
      notices.toReversed().join('').replaceAll(' ', ''),
    );
  });

  it.each(sizes)('fits %i x %i', (columns, rows) => {
    const shown = drawn({ notices, pings: log }, [columns, rows]);
    expect(shown).toHaveLength(rows);
    for (const row of shown) expect(row.length).toBeLessThanOrEqual(columns);
  });

  it('has no heading where there is nothing', () => {
    expect(drawn({ pings: log }, [80, 60]).join()).not.toContain('noticed');
  });
});

describe('keys on the log of pings', () => {
  const press = (name: string, state = start, size: Size = [40, 20]) =>
    pingsScreen.press(
      state,
      key(name),
      viewWith({ pings: log }, size),
      portOf(() => snapshotOf(bench)),
    );

  it('move through it down to its end', () => {
    expect(press('down').state?.from).toBe(1);
    const end = press('end').state ?? start;
    const shown = drawn({ pings: log }, [40, 20], end);
    expect(shown.join('\n')).toContain('Pings: desktop yes, bell yes.');
    expect(press('page down', end).state).toEqual(end);
    expect(press('home', end).state?.from).toBe(0);
  });

  it.each(['escape', 'enter', 'i'])('go back on %s', (name) => {
    expect(press(name)).toEqual({ back: true });
  });
});
