import { describe, expect, it } from 'vitest';
import { benchStart, type BenchState } from '../../../src/views/bench/bench-state.ts';
import { benchScreen } from '../../../src/views/bench/index.ts';
import { createDesk } from '../../../src/views/desk.ts';
import type { BenchPort } from '../../../src/views/port.ts';
import type { View } from '../../../src/views/screen.ts';
import {
  at,
  Facts,
  key,
  ping,
  portOf,
  rowsOf,
  sizes,
  snapshotOf,
  viewOf,
  withSettings,
  type Size,
} from '../support/bench-of.ts';
import { FakePort } from '../support/fake-port.ts';

const now = at('24 14:29');
const snapshot = snapshotOf(new Facts().bench());
const pingWays = { desktop: true, says: 'Pings: desktop yes, bell yes.' };
const start = benchStart(now - 5000);

const viewWith = (more: Partial<View> = {}, size?: Size): View =>
  viewOf(snapshot, now, size, { pingWays, hasDemo: true, ...more });

const drawn = (more: Partial<View> = {}, size?: Size, state: BenchState = start) =>
  rowsOf(benchScreen.draw(state, viewWith(more, size)));

describe('an empty bench', () => {
  it('says in three lines what to do, offers to begin, and says how it pings here', () => {
    expect(drawn()).toEqual([
      '14:29  Tue 24 Nov                                   air not read yet: c notes it',
      '',
      'The bench is empty.',
      '',
      'Add a piece: a name and a finishing schedule will do.',
      'Pick it up and its minutes run; put a coat on and its window shows here.',
      '',
      '  > 1 add a piece',
      '    2 open the demo: an invented shop, nothing in it is kept',
      '',
      'Pings: desktop yes, bell yes. While recoat is closed nothing pings.',
      ...Array.from({ length: 12 }, () => ''),
      'Enter that one  a add a piece  k all keys  q leave  z past pieces  u settings',
    ]);
  });

  it('says so where a keeper pings while recoat is closed', () => {
    const kept = { ...snapshot, keeper: 'there' as const };
    expect(drawn({ snapshot: kept })).toContain(
      'Pings: desktop yes, bell yes. While recoat is closed the keeper pings.',
    );
  });

  it('offers no demo where none can be opened', () => {
    const text = drawn({ hasDemo: false }).join('\n');
    expect(text).not.toContain('demo');
    expect(text).toContain('  > 1 add a piece');
  });

  it.each(sizes)('keeps its offers at %i x %i', (columns, rows) => {
    const shown = drawn({}, [columns, rows]);
    expect(shown).toHaveLength(rows);
    for (const row of shown) expect(row.length).toBeLessThanOrEqual(columns);
    expect(shown.join('\n')).toContain('  > 1 add a piece');
    expect(shown.join('\n')).toContain('    2 open the demo');
  });

  it('shows what was noticed, what was refused, and what calls', () => {
    const loud = ping('a', '24 14:28', 'Clamps off', { loud: true });
    const view = viewWith({
      snapshot: { ...snapshot, notices: ['bench.json was set aside.'], pings: [loud] },
      message: { text: 'Not taken back: nothing was done yet.', refused: true },
    });
    const rows = rowsOf(benchScreen.draw(start, view));
    expect(rows[1]).toBe('!! Clamps off');
    expect(rows.slice(-3, -1)).toEqual([
      'bench.json was set aside.',
      'Not taken back: nothing was done yet.',
    ]);
  });

  it("names a person's own keys", () => {
    const view = viewWith({
      snapshot: { ...snapshot, settings: withSettings({ keys: { add: ['l'] } }) },
    });
    expect(rowsOf(benchScreen.draw(start, view)).at(-1)).toContain('l add a piece');
  });
});

describe('keys on an empty bench', () => {
  const press = (name: string, state = start, port: Partial<BenchPort> = {}) =>
    benchScreen.press(
      state,
      key(name),
      viewWith(),
      portOf(() => snapshot, port),
    );
  const addPiece = { is: 'add piece', name: '', schedules: null };

  it.each(['enter', 'space', '1', 'a'])('add a piece: %s', (name) => {
    expect(press(name).open).toEqual(addPiece);
  });

  it('open the demo, by its number or once it is marked', () => {
    let opened = 0;
    const openDemo = () => void (opened += 1);
    press('2', start, { openDemo });
    expect(opened).toBe(1);
    const marked = press('down').state ?? start;
    expect(drawn({}, undefined, marked)).toContain(
      '  > 2 open the demo: an invented shop, nothing in it is kept',
    );
    press('enter', { ...marked, guard: start.guard }, { openDemo });
    expect(opened).toBe(2);
    expect(press('up', { ...marked, guard: start.guard }).state?.offer).toBe('add');
  });

  it('act as always otherwise', () => {
    expect(press('u').open?.is).toBe('settings');
    expect(press('k').open?.is).toBe('keys');
    expect(press('q').leave).toBe(true);
  });

  it('show the list of the numeric pad, and pick from it', () => {
    const list = press('/').state ?? start;
    expect(drawn({}, undefined, list).join('\n')).toContain('0-9: that one');
  });

  it('count once when a glove bounces', () => {
    const first = press('down').state ?? start;
    expect(press('down', first).state?.offer).toBe(first.offer);
  });
});

it('is offered through the desk, from the port', () => {
  const base = new FakePort({ now });
  let opened = false;
  const port: BenchPort = Object.assign(base, {
    pingWays: () => pingWays,
    openDemo: () => {
      opened = true;
    },
  });
  const desk = createDesk({
    port,
    ticks: base.ticks,
    theme: () => ({ colour: 'none', glyphs: 'blocks' }),
    leave: () => undefined,
  });
  expect(rowsOf(desk.frame(80, 24)).join('\n')).toContain('2 open the demo');
  desk.press([key('2')]);
  expect(opened).toBe(true);
});
