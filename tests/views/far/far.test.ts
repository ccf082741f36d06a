import { describe, expect, it, test } from 'vitest';
import { hour, minute } from '../../../src/tracker/time/index.ts';
import type { WindowRule } from '../../../src/tracker/windows/index.ts';
import { benchStart, type BenchState } from '../../../src/views/bench/bench-state.ts';
import { benchScreen } from '../../../src/views/bench/index.ts';
import { largeFigures, lineWidth, plain } from '../../../src/views/drawing/index.ts';
import type { ShownPing, Snapshot } from '../../../src/views/port.ts';
import type { Frame } from '../../../src/views/screen.ts';
import type { Theme } from '../../../src/views/theme/index.ts';
import {
  afternoon,
  at,
  barred,
  bleach,
  Facts,
  fullCure,
  key,
  ping,
  pot,
  portOf,
  recoat,
  rowsOf,
  sizes,
  snapshotOf,
  step,
  tense,
  viewOf,
  withSettings,
  type Size,
} from '../support/bench-of.ts';
import { deskOf } from '../support/desk-of.ts';

const { milestone: _, ...unnamed } = barred;
const betweenPasses: WindowRule = { ...unnamed, scope: 'pass', closedBy: { by: 'next pass' } };

/** Bleach on piece 2, and on 5, which is in hand, pass 4 by 16:49. */
const both = () =>
  tense()
    .piece('12-01 09:03', 5, 'Garden bench', [
      step('spray', 'aerosol', { passes: 4, windows: [betweenPasses] }),
    ])
    .stamp('12-03 15:49', 5, 'spray', 'first-stroke', { pass: 3 })
    .stamp('12-03 15:55', 5, 'spray', 'last-stroke', { pass: 3 })
    .pickUp('12-03 16:35', 5, 'spray');

const loudB = ping(
  'a',
  '12-03 16:40',
  '2 Wall shelf: B on, by 16:42. Late: rinse, dry, start over.',
  {
    loud: true,
    piece: 'p2',
  },
);

type Given = {
  readonly facts?: Facts;
  readonly when: string;
  readonly size?: Size;
  readonly snapshot?: Partial<Snapshot>;
  readonly state?: Partial<BenchState>;
  readonly glyphs?: Theme['glyphs'];
};

function frameOf({
  facts = both(),
  when,
  size,
  snapshot = {},
  state = {},
  glyphs = 'blocks',
}: Given): Frame {
  const now = at(when);
  const view = viewOf(snapshotOf(facts.bench(), snapshot), now, size);
  return benchScreen.draw(
    { ...benchStart(now - 2 * minute), selected: 'p5', ...state },
    { ...view, theme: { colour: 'none', glyphs } },
  );
}

const far = (given: Given): readonly string[] => rowsOf(frameOf(given));

/** Whether large letters stand one below the other somewhere on a screen. */
function shows(
  rows: readonly string[],
  text: string,
  height: 3 | 5,
  glyphs: Theme['glyphs'] = 'blocks',
): boolean {
  const letters = largeFigures(text, height, glyphs).map((row) => row.trimEnd());
  return rows.some((row, index) => {
    const places = [...row.matchAll(new RegExp(literally(letters[0] ?? ''), 'g'))].map(
      (match) => match.index,
    );
    return places.some((place) =>
      letters.every(
        (letter, below) => rows[index + below]?.slice(place).startsWith(letter) === true,
      ),
    );
  });
}

const literally = (text: string): string => text.replaceAll(/[.*+?^${}()|[\]\\]/g, '\\$&');

describe('the far view while something spoils', () => {
  it('shows number, verb, count-down and clock, several rows tall', () => {
    const rows = far({ when: '12-03 16:41:20' });
    expect(shows(rows, '2', 5)).toBe(true);
    expect(shows(rows, 'B on', 3)).toBe(true);
    expect(shows(rows, '0:40', 5)).toBe(true);
    expect(shows(rows, '16:42', 3)).toBe(true);
    expect(rows).toContain(
      '   2 Wall shelf: B on, by 16:42. Late: rinse, dry, start over. Gloves,',
    );
  });

  it('shows what comes second in three rows', () => {
    const rows = far({ when: '12-03 16:41:20' });
    expect(shows(rows, '5', 3)).toBe(true);
    expect(shows(rows, 'pass 4', 3)).toBe(true);
    expect(shows(rows, '7:40', 3)).toBe(true);
    expect(rows.join('\n')).toContain('5 Garden bench: pass 4 of 4: first stroke by 16:49.');
  });

  it('marks where the sentence of the second goes on beyond its row', () => {
    const facts = tense()
      .piece('12-03 09:00', 7, 'Long shelf', [step('bleach', 'bleach', { windows: [bleach] })])
      .stamp('12-03 16:32', 7, 'bleach', 'first-stroke', { agent: 'A' });
    const second = far({ facts, when: '12-03 16:41:20' }).find((row) => row.includes('7 Long'));
    expect(second).toMatch(/^ {3}7 Long shelf: B on from .*…$/);
  });

  it('counts to the opening while A still works, and says late since when after', () => {
    const working = far({ when: '12-03 16:35' });
    expect(shows(working, '5:00', 5)).toBe(true);
    expect(shows(working, '16:40', 3)).toBe(true);
    const late = far({ when: '12-03 16:43' });
    expect(shows(late, 'late', 5)).toBe(true);
    expect(late.join('\n')).toContain(
      '2 Wall shelf: B on, late since 16:42. Rinse, dry, start over.',
    );
  });

  it('comes before what costs work, also when that closes sooner', () => {
    const sooner = both().stamp('12-03 15:41', 5, 'spray', 'first-stroke', { pass: 3 });
    expect(shows(far({ when: '12-03 16:40:10', facts: sooner }), '1:50', 5)).toBe(true);
  });

  it('asks for a tick each second only while seconds show', () => {
    expect(frameOf({ when: '12-03 16:41:20' }).ticking).toBe(true);
    expect(frameOf({ facts: afternoon(), when: '24 14:29' }).ticking).toBe(false);
  });

  it('keeps verb and figures at 120 x 36, larger where there is room', () => {
    const rows = far({ when: '12-03 16:41:20', size: [120, 36] });
    for (const text of ['2', 'B on', '0:40', '16:42'])
      expect(shows(rows, text, 5), text).toBe(true);
    expect(shows(rows, '7:40', 3)).toBe(true);
  });

  it('keeps number, verb and count-down at 40 columns', () => {
    const rows = far({ when: '12-03 16:41:20', size: [40, 20] });
    expect(shows(rows, '2', 5)).toBe(true);
    expect(shows(rows, 'B on', 3)).toBe(true);
    expect(shows(rows, '0:40', 5)).toBe(true);
    expect(rows.join(' ')).toContain('2 Wall shelf: B on, by 16:42.');
  });

  it('keeps the count-down in the smallest terminal', () => {
    const rows = far({ when: '12-03 16:41:20', size: [32, 10] });
    expect(rows).toContain('   2 B on');
    expect(shows(rows, '0:40', 3)).toBe(true);
  });

  it('is drawn with # in ASCII', () => {
    const rows = far({ when: '12-03 16:41:20', glyphs: 'ascii' });
    for (const text of ['2', 'B on', '0:40', '16:42'])
      expect(shows(rows, text, 5, 'ascii'), text).toBe(true);
    expect(rows.join('\n')).toMatch(/^[\x20-\x7e\n]*$/);
  });
});

describe('the far view while a ping calls', () => {
  const calling = (size?: Size) => ({
    when: '12-03 16:41:20',
    snapshot: { pings: [loudB] },
    ...(size === undefined ? {} : { size }),
  });

  it('turns the whole block over, from edge to edge', () => {
    const { lines } = frameOf(calling());
    const turned = lines.filter((line) => line.some(({ role }) => role === 'loud'));
    expect(turned).toHaveLength(14);
    for (const line of turned) {
      expect(lineWidth(line)).toBe(80);
      expect(new Set(line.map(({ role }) => role))).toEqual(new Set(['loud']));
    }
    expect(turned.map(plain).join('\n')).toContain('2 Wall shelf: B on, by 16:42.');
  });

  it('says what a key does and what the next one would', () => {
    expect(far(calling()).slice(-2)).toEqual([
      'keys act on [5] Garden bench, in hand 6 min',
      'Any key silences and selects 2, no more.  Then Space: 2 B, first stroke on',
    ]);
    expect(far(calling([40, 20])).at(-1)).toBe('Any key silences, selects 2');
  });

  it('is plain again once it is silenced', () => {
    const silenced: ShownPing = { ...loudB, seenAt: at('12-03 16:41') };
    const { lines } = frameOf({ when: '12-03 16:41:20', snapshot: { pings: [silenced] } });
    expect(lines.flat().some(({ role }) => role === 'loud')).toBe(false);
    expect(lines.flat().some(({ role }) => role === 'spoils')).toBe(true);
  });

  it('tells a ping in its own words where its window is not among what is drawn', () => {
    const gone = { ...loudB, piece: null };
    const rows = far({ when: '12-03 16:41:20', snapshot: { pings: [gone] } });
    expect(rows[2]).toBe('!! 2 Wall shelf: B on, by 16:42. Late: rinse, dry, start over.');
    expect(rows.at(-1)).toBe('Any key silences, no more.');
  });
});

describe('the far view in the calm', () => {
  it('shows the next opening in three rows and nothing else', () => {
    const rows = far({ facts: afternoon(), when: '24 14:29' });
    expect(shows(rows, '3', 3)).toBe(true);
    expect(shows(rows, 'try it', 3)).toBe(true);
    expect(shows(rows, '15:10', 3)).toBe(true);
    expect(rows.slice(6).filter((row) => row !== '')).toEqual([
      '   3 Beech stool: try it from 15:10, 41 min',
      'keys act on [5] Garden bench',
      '1-9 another piece.  Any other key acts and brings the bench back.',
    ]);
  });

  it('stays calm over something that spoils hours from now', () => {
    const mixed = new Facts()
      .piece('24 09:00', 2, 'Wall shelf', [step('mix', 'mix', { windows: [pot] })])
      .stamp('24 16:00', 2, 'mix', 'mixed');
    const rows = far({ facts: mixed, when: '24 16:10' });
    expect(shows(rows, 'wash out', 3)).toBe(true);
    expect(shows(rows, '20:00', 3)).toBe(true);
    expect(rows.join('\n')).toContain('   2 Wall shelf: wash out by 20:00, 3 h 50');
    expect(shows(far({ facts: mixed, when: '24 19:51' }), '9:00', 5)).toBe(true);
  });

  it('shows for a minute what a quiet ping rang for, before what opens next', () => {
    const rang = ping('q', '24 14:29', '2 Plant stand: try it, till 18:30', { piece: 'p2' });
    const shownAt = (when: string) =>
      far({ facts: afternoon(), when, snapshot: { pings: [rang] } }).join('\n');
    expect(shownAt('24 14:29:30')).toContain('   2 Plant stand: try it, till 18:30');
    expect(shownAt('24 14:30:30')).toContain('   3 Beech stool: try it from 15:10');
  });

  it('says how long it is till then over midnight too, and the day once', () => {
    const late = new Facts()
      .piece('24 09:00', 3, 'Book rack', [
        step('coat', 'clear coat 1', { windows: [recoat(2 * hour, 12 * hour)] }),
        step('next', 'clear coat 2', { needs: ['recoat'] }),
      ])
      .stamp('24 14:00', 3, 'coat', 'first-stroke')
      .done('24 14:30', 3, 'coat');
    expect(far({ facts: late, when: '24 17:00' }).join('\n')).toContain(
      '   3 Book rack: try it, till Wed 02:00, 9 h 00',
    );
  });

  it('shows a coat that may be tried, and waits without an end, where nothing counts down', () => {
    const dry = new Facts()
      .piece('24 09:00', 3, 'Book rack', [
        step('coat', 'clear coat 1', { windows: [recoat(2 * hour, null)] }),
        step('next', 'clear coat 2', { needs: ['recoat'] }),
      ])
      .done('24 10:00', 3, 'coat');
    const rows = far({ facts: dry, when: '24 14:29' });
    expect(shows(rows, 'try it', 3)).toBe(true);
    expect(rows.join('\n')).toContain('   3 Book rack: try it since 12:00');
    expect(rows.join('\n')).not.toContain('No window is running');
  });

  it('says so where nothing is running, and does not count a cure', () => {
    const waiting = new Facts().piece('24 09:00', 6, 'Cane rocker', [step('look', 'look over')]);
    expect(far({ facts: waiting, when: '24 14:29' })[2]).toBe('   No window is running.');
    const curing = new Facts()
      .piece('24 09:00', 7, 'Walnut tray', [step('oil', 'oil', { windows: [fullCure] })])
      .done('24 10:00', 7, 'oil');
    expect(far({ facts: curing, when: '24 14:29' })[2]).toBe('   Nothing needs hands.');
  });
});

test('a minute untouched is a minute on every screen: who closes one is at the bench', () => {
  const { press, text } = deskOf({ now: at('24 14:29'), facts: afternoon().list });
  press('1', 'p', ...Array.from({ length: 40 }, (_, index) => (index % 2 === 0 ? 'down' : 'up')));
  press('escape');
  expect(text()).toContain('in hand  1 Oak settle');
});

describe('the far view never overflows', () => {
  const scenes: readonly Given[] = [
    { when: '12-03 16:41:20' },
    { when: '12-03 16:41:20', snapshot: { pings: [loudB] } },
    {
      when: '12-03 16:43',
      snapshot: { obstacle: { says: 'Not recorded: disk full.', todo: 'Free 1 MB.' } },
    },
    { when: '12-03 16:35', snapshot: { awake: { kept: false, says: 'The machine may sleep.' } } },
    {
      when: '12-03 16:35',
      snapshot: {
        awake: {
          kept: true,
          says: 'Kept awake.',
          closing: 'On battery: no pings if this closes or runs down.',
        },
      },
    },
    { facts: afternoon(), when: '24 14:29' },
    {
      facts: new Facts().tell('24 14:00', 'timer-started', {
        timer: 't',
        piece: null,
        label: 'clamps off the long rail & turn it',
        ms: 35 * minute,
      }),
      when: '24 14:29',
    },
  ];
  const all: readonly Size[] = [...sizes, [80, 12], [60, 24], [200, 60], [47, 15]];

  it.each(all)('at %i x %i', (columns, rows) => {
    for (const scene of scenes) {
      for (const glyphs of ['blocks', 'ascii'] as const) {
        const { lines } = frameOf({ ...scene, size: [columns, rows], glyphs });
        expect(lines).toHaveLength(rows);
        // The last two lines are cut by the desk where a message is long.
        for (const line of lines.slice(0, -2))
          expect(lineWidth(line), plain(line)).toBeLessThanOrEqual(columns);
      }
    }
  });
});

describe('keys in the far view', () => {
  const now = at('12-03 16:35');
  const snapshot = snapshotOf(both().bench());
  const state: BenchState = { ...benchStart(now - 2 * minute), selected: 'p5' };
  const press = (name: string, from = state, when = now) =>
    benchScreen.press(
      from,
      key(name),
      viewOf(snapshot, when),
      portOf(() => snapshot, {
        act: () => ({ ok: true, says: 'done', piece: null }),
        acknowledge: () => undefined,
      }),
    ).state ?? from;

  it('choose a piece by digit and stay; the foot names it', () => {
    const chosen = press('3');
    expect(chosen).toMatchObject({ selected: 'p3', touchedAt: state.touchedAt });
    const rows = rowsOf(benchScreen.draw(chosen, viewOf(snapshot, now)));
    expect(rows.at(-2)).toBe('keys act on [3] Book rack');
  });

  it('act as on the bench otherwise, and bring it back', () => {
    const back = press('d');
    expect(back.touchedAt).toBe(now);
    expect(rowsOf(benchScreen.draw(back, viewOf(snapshot, now)))[3]).toContain('in hand');
  });

  it('leave the far view at a digit on the bench itself', () => {
    const near = press('3', { ...state, touchedAt: now - 1000 });
    expect(near.touchedAt).toBe(now);
  });

  it('show the part that they act on', () => {
    const parts = both().tell('12-03 16:30', 'parts-named', {
      piece: 'p5',
      parts: [{ id: 'a', name: 'slats' }],
    });
    const rows = far({ facts: parts, when: '12-03 16:35', state: { part: 'a' } });
    expect(rows.at(-2)).toBe('keys act on [5] Garden bench, slats, in hand 0 min');
  });

  it('are never asked where the far view is switched off', () => {
    const settings = withSettings({ farView: 0 });
    const rows = far({ when: '12-03 16:41:20', snapshot: { settings } });
    expect(rows.at(-1)).toContain('all keys');
  });
});
