import stringWidth from 'string-width';
import { describe, expect, it } from 'vitest';
import { plain } from '../../../src/views/drawing/index.ts';
import type { StepOff } from '../../../src/tracker/review/index.ts';
import { offLines } from '../../../src/views/hours/furthest-off.ts';
import { hoursPages } from '../../../src/views/hours/hours-pages.ts';
import { hoursScreen } from '../../../src/views/hours/index.ts';
import { reviewTitle } from '../../../src/views/hours/review-title.ts';
import type { HoursState } from '../../../src/views/screens.ts';
import { at, rowsOf, sizes, snapshotOf, viewOf, type Size } from '../support/bench-of.ts';
import { deskOf, type DrivenDesk } from '../support/desk-of.ts';
import { inventedWork, session } from './invented-work.ts';

const now = at('17 14:00');

const opened = (work = inventedWork()): DrivenDesk =>
  deskOf({
    now,
    facts: work.shop.facts(),
    start: { is: 'hours', piece: work.stool, at: 0, past: null },
  });

const rowOf = (desk: DrivenDesk, name: string, size?: Size): string => {
  const row = desk.rows(size).find((line) => line.slice(2).startsWith(name));
  if (row === undefined) throw new Error(`no row ${name}`);
  return row;
};

/** The screen as it draws itself, before the desk cuts anything to the terminal. */
const drawn = (state: HoursState, facts: ReturnType<typeof inventedWork>, size: Size) =>
  hoursScreen
    .draw(state, viewOf(snapshotOf(facts.shop.bench()), now, size))
    .lines.map((line) => plain(line));

/** The same with seven minutes on the stool that belong to no step. */
function withOtherWork() {
  const work = inventedWork();
  const { shop, stool } = work;
  shop.act({ do: 'pick up', targets: [{ piece: stool, part: null, step: null }] }, at('17 13:40'));
  shop.act({ do: 'put down' }, at('17 13:47'));
  return work;
}

describe('hours of one piece on the screen', () => {
  it('shows estimate, range, minutes and verdict of each step class beside a picture on one axis', () => {
    const desk = opened();
    expect(desk.rows()[0]).toBe(
      'hours: 1 Beech stool                               recorded 5 h 22 in 5 sessions',
    );
    expect(desk.rows().slice(2, 13)).toEqual([
      'step class              est   range  min         0         60        120     180',
      '> look over              20   10-40   18 inside    ├●───┤',
      '  strip                  61  34-135   64 inside        ├───┼●───────────┤',
      '  sand bare, first grit  30   17-61   38 inside     ├─┼●───┤',
      '  sand bare, next grit   39   27-57  174 over         ├─┼─┤                   ●',
      '  rinse, neutralise      14   10-24    -           ┼─┤',
      '  coat, brushed          42   30-58    -              ├─┼──┤',
      '  scuff                  10    7-20    -          ├┼┤',
      '  refit, wrap            35   20-60    -            ├──┼───┤',
      '  done so far           163 113-233  293 over',
      '  to go                 105  81-136',
    ]);
    expect(rowOf(desk, 'setup, cleanup')).toContain('about; once a session, not by area');
  });

  it('tells the same range of what is to go on a narrow screen', () => {
    expect(opened().rows([40, 24]).join('\n')).toContain('to go 81 to 136, 4 times in 5');
  });

  it('goes step by step and back with s, and marks rows with up and down', () => {
    const desk = opened();
    desk.press('s', 'down', 'down');
    expect(desk.text()).toContain('> sand 100               30   17-61   38 inside');
    expect(desk.text()).toContain('  vinegar, then clear…');
    desk.press('up', 'up', 'up');
    expect(desk.text()).toContain('> look over, lead test');
    desk.press('end', 'down');
    expect(desk.text()).toContain('> refit, wrap');
    desk.press('s');
    expect(desk.text()).toContain('> look over ');
  });

  it('says why the marked row expects what it does, and how that work ran before', () => {
    const desk = opened();
    desk.press('down');
    expect(desk.text()).toContain(
      "Why 61 for strip: the finishing schedule's 90, at 1.2 m2. Your strip ran 1.0\ntimes the estimate, 4 pieces.",
    );
    desk.press('end');
    expect(desk.text()).toContain(
      "Why 35 for refit, wrap: the finishing schedule's 35. Not yet from you.",
    );
  });

  it('tells the size by which it expects in square feet where the shop counts in inches', () => {
    const work = inventedWork();
    const bench = work.shop.bench();
    const state: HoursState = { is: 'hours', piece: work.stool, at: 1, past: null };
    const snapshot = snapshotOf(bench, { shop: { ...snapshotOf(bench).shop, lengths: 'in' } });
    const text = rowsOf(hoursScreen.draw(state, viewOf(snapshot, now))).join(' ');
    // 1.2 m2, of which 0.09290304 are a square foot.
    expect(text).toContain("the finishing schedule's 90, at 13 sq ft");
  });

  it('shows what is begun as it grows, and counts it off what is to go', () => {
    const work = inventedWork();
    session(work.shop, work.stool, '17 13:40', '17 13:52', false);
    const desk = opened(work);
    expect(rowOf(desk, 'rinse, neutralise')).toMatch(/ 12 so far/);
    expect(rowOf(desk, 'to go')).toContain('less 12 spent on what is begun');
  });

  it('counts off no more than the estimate of what is begun, and says so', () => {
    const work = inventedWork();
    session(work.shop, work.stool, '17 13:31', '17 13:50', false);
    const desk = opened(work);
    expect(rowOf(desk, 'rinse, neutralise')).toMatch(/ 14 +10-24 +19 so far/);
    expect(rowOf(desk, 'to go')).toContain('less 14 of 19 spent on what is begun');
  });

  it('says that expected totals are not the rows added up, where there is room', () => {
    const note = 'Expected totals are not the rows added up: slow ones and fast ones even out.';
    expect(opened().text()).toContain(note);
    expect(opened().text([40, 40])).toContain('Expected totals: not the rows added up.');
    expect(opened().text([40, 18])).not.toContain('added up');
  });

  it('points out work that belongs to no step', () => {
    expect(rowOf(opened(withOtherWork()), 'other work')).toMatch(/ 7 of no step$/);
  });

  it('has a narrow form with the same bars on one axis, and the figures of the marked row below', () => {
    const desk = opened();
    desk.press('down');
    const rows = desk.rows([40, 20]);
    expect(rows[0]).toBe('hours: 1 Beech stool              5 h 22');
    expect(rows.slice(1, 5)).toEqual([
      'class, 2 of 8     min        0  60   180',
      '  look over        18 inside  ●┤',
      '> strip            64 inside   ├┼●───┤',
      '  sand bare, fi…   38 inside  ├●┤',
    ]);
    expect(rows.join('\n')).toContain('Expected 34 to 135. Why 61:');
    expect(rows.join('\n')).toContain('done 293: over, expected 113 to 233');
    expect(rows.join('\n')).toMatch(/^setup about \d+; schedule \d+$/m);
  });

  it('says the totals in fewer words where they would not fit', () => {
    const work = withOtherWork();
    const lines = drawn({ is: 'hours', piece: work.stool, at: 0, past: null }, work, [32, 20]);
    expect(lines).toContain('done 293: over, 113 to 233');
    expect(lines).toContainEqual(expect.stringMatching(/^setup about \d+; other 7$/));
    for (const line of lines) expect(stringWidth(line)).toBeLessThanOrEqual(32);
  });

  it('keeps every line within the terminal, and pictures in one column, whatever the names', () => {
    const work = inventedWork('食器棚 with a name far too long for any column 🪑🪑🪑 and more');
    for (const size of sizes) {
      const [columns, rows] = size;
      for (const by of ['class', 'step'] as const) {
        const state: HoursState = { is: 'hours', piece: work.stool, at: 3, past: null, by };
        const lines = drawn(state, work, size);
        expect(lines.length).toBeLessThanOrEqual(rows);
        for (const line of lines) expect(stringWidth(line)).toBeLessThanOrEqual(columns);
        const marked = lines.filter((line) => line.startsWith('> '));
        expect(marked).toHaveLength(1);
      }
    }
  });

  it('keeps columns straight behind a step with wide characters in its name', () => {
    const work = inventedWork();
    const { shop, stool } = work;
    shop.act(
      { do: 'reword step', piece: stool, step: 'sand-120', name: '研磨 sand 120 研磨研磨研磨研磨' },
      now,
    );
    const lines = drawn(
      { is: 'hours', piece: stool, at: 0, past: null, by: 'step' },
      work,
      [80, 24],
    );
    const wide = lines.find((line) => line.includes('研磨')) ?? '';
    expect(stringWidth(wide)).toBe(80);
    expect(stringWidth(wide.slice(0, wide.indexOf('over')))).toBe(41);
    const plainRow = lines.find((line) => line.startsWith('  sand 150')) ?? '';
    expect(plainRow.indexOf('inside')).toBe(41);
  });

  it('says which row is marked where not all are shown, and keeps that one in sight', () => {
    const desk = opened();
    const size = [80, 18] as const;
    desk.rows(size);
    desk.press('end');
    expect(desk.text(size)).toContain('step class, 8 of 8');
    expect(desk.text(size)).toContain('> refit, wrap');
    expect(desk.text(size)).not.toContain('look over ');
  });

  it('goes to another piece on the bench by its number, and refuses one that is none', () => {
    const desk = opened();
    desk.press('2');
    expect(desk.rows()[0]).toContain('hours: 2 Book rack');
    expect(desk.rows()[0]).toContain('recorded 0 min in 0 sessions');
    desk.press('7');
    expect(desk.text()).toContain('Not shown: no piece has number 7.');
  });

  it('draws in plain ASCII where the theme asks for it', () => {
    const work = inventedWork();
    const desk = deskOf({
      now,
      facts: work.shop.facts(),
      start: { is: 'hours', piece: work.stool, at: 0, past: null },
      theme: { colour: 'bare', glyphs: 'ascii' },
    });
    expect(desk.text()).toMatch(/^[\x20-\x7e\n]*$/);
    expect(desk.text()).toContain('| | four times in five   + estimate   o yours');
  });
});

describe('hours over finished pieces on the screen', () => {
  it('shows the lean of each class, and says where nothing comes from these hands yet', () => {
    const desk = opened();
    desk.press('tab');
    expect(desk.rows().slice(0, 7)).toEqual([
      'hours: 4 finished pieces, 2 Nov to 5 Nov',
      '',
      'step class              pcs   you take    range half            as said   double',
      '> whole piece             4  1.0 times  0.8-1.3            ├───┼──────┤',
      '  look over               4  1.0 times  1.0-1.0                 ┼',
      '  strip                   4  1.0 times  0.7-1.6         ├───────┼─────────┤',
      '  sand bare, first grit   4  1.0 times  1.0-1.0                ┼',
    ]);
    expect(rowOf(desk, 'coat, brushed')).toContain('from the finishing schedule, not yet from you');
    expect(desk.text()).toContain('The range held 12 of 12 times; 4 in 5 was claimed.');
  });

  it('names the steps furthest off with their notes, of all classes or of the marked one', () => {
    const desk = opened();
    desk.press('tab');
    expect(desk.text()).toContain(
      'furthest off  Hall bench     strip, test s… est 90 took 160  two layers of paint',
    );
    expect(desk.text([40, 24])).toContain(
      'furthest off:\nHall bench, strip, tes… took 160, est 90\n',
    );
    desk.press('down');
    expect(desk.text()).toContain('> look over');
    expect(desk.text()).not.toContain('furthest off');
    desk.press('down');
    expect(desk.text()).toContain('Hall bench');
  });

  it('goes round all ways of looking with Tab and arrows, each naming the next, back to the piece', () => {
    const desk = opened();
    desk.press('tab', 'w');
    expect(desk.text()).toContain(
      'Not here: that is about one piece. Press its number, or Tab till it shows.',
    );
    for (const [hint, title] of [
      ['Tab by schedule', 'step class'],
      ['Tab over time', 'finishing schedule'],
      ['Tab past ranges', 'month'],
      ['Tab back-test', 'piece   '],
      ['Tab where the hours went', 'step class'],
      ['Tab one piece', 'hands'],
    ] as const) {
      expect(desk.rows()[2]).toMatch(new RegExp(`^${title}`));
      desk.press('up');
      expect(desk.text()).toContain(hint);
      desk.press('tab');
    }
    expect(desk.rows()[0]).toContain('hours: 1 Beech stool');
    desk.press('left');
    expect(desk.rows()[2]).toMatch(/^hands/);
    desk.press('left', 'left');
    expect(desk.rows()[2]).toMatch(/^piece/);
  });

  it('shows past ranges as they were claimed, and where each piece came out', () => {
    const desk = opened();
    desk.press('left', 'left', 'left');
    expect(desk.rows().slice(2, 9)).toEqual([
      'piece                        claimed then     took         0 h    2 h   4 h  6 h',
      '> Side table             1 h 44 to 4 h 27   2 h 54 inside        ├──┼●────┤',
      '  Hat rack               1 h 44 to 4 h 27   2 h 14 inside        ├●─┼─────┤',
      '  Music stand            1 h 44 to 4 h 27   2 h 04 inside        ├●─┼─────┤',
      '  Hall bench             1 h 44 to 4 h 27   3 h 44 inside        ├──┼──●──┤',
      '',
      'Whole pieces: the range held 4 of 4 times; 4 in 5 was claimed. Few pieces yet, a',
    ]);
  });

  it('shows where the hours went, and in words what cost most', () => {
    const desk = opened();
    desk.press('left');
    expect(desk.text()).toContain('> working');
    expect(desk.text([40, 24])).toMatch(/^ {2}setup \(about\) /m);
    expect(desk.text()).toContain('Waiting on the bench: ');
    expect(desk.text()).toContain(
      'strip: 40 min over estimate on 4 pieces, mostly on Hall bench; few pieces yet',
    );
  });

  it('says that a drift can not be told from few pieces', () => {
    const desk = opened();
    desk.press('tab', 'tab', 'tab');
    expect(desk.text()).toContain('> Nov 2026');
    expect(desk.text()).toContain(
      'Too few to tell whether it drifts: 4 pieces, from 8 on it is said.',
    );
  });

  it('says in words that there is nothing to judge in an empty shop', () => {
    const desk = deskOf({ now, start: { is: 'hours', piece: null, at: 0, past: null } });
    for (const size of sizes) {
      expect(desk.text(size)).toContain('no finished piece yet');
      expect(desk.text(size)).not.toMatch(/NaN|undefined|Infinity/);
    }
    for (const _ of hoursPages) {
      for (const size of sizes) expect(desk.text(size)).not.toMatch(/NaN|undefined|Infinity/);
      desk.press('tab');
    }
    // Round again, as the foot says: there is no piece to show.
    expect(desk.text()).toContain('Tab by schedule');
    expect(desk.text()).not.toContain('Not shown');
    desk.press('left');
    expect(desk.text()).toContain('Tab all pieces');
  });

  it('says so once on each page, and names no key for a piece where there is none', () => {
    const desk = deskOf({ now, start: { is: 'hours', piece: null, at: 0, past: null } });
    for (const _ of hoursPages) {
      const sentences = desk.rows().filter((row) => row.endsWith('.'));
      expect(new Set(sentences).size).toBe(sentences.length);
      expect(desk.text()).not.toMatch(/Enter that piece|x leave/);
      desk.press('tab');
    }
  });

  it('keeps every line within the terminal', () => {
    const work = inventedWork();
    for (const size of sizes) {
      for (const page of hoursPages) {
        const lines = drawn({ is: 'hours', piece: null, at: 2, past: null, page }, work, size);
        expect(lines.length).toBeLessThanOrEqual(size[1]);
        for (const line of lines) expect(stringWidth(line)).toBeLessThanOrEqual(size[0]);
      }
    }
  });

  it('names past years that can not be read', () => {
    const work = inventedWork();
    const past = { bench: work.shop.bench(), problems: ['History of 2024 is damaged.'] };
    const state: HoursState = { is: 'hours', piece: null, at: 0, past };
    expect(drawn(state, work, [80, 24])[0]).toContain('4 finished pieces');
    expect(drawn(state, work, [80, 24]).join('\n')).toContain('History of 2024 is damaged.');
  });

  it('gives names the room of notes where there is none, and figures their columns', () => {
    const lines = offLines(
      [off('Wash stand', 'hardware back on', 25, 11), off('Wash stand', 'strip, insides', 65, 138)],
      80,
      'blocks',
    ).map((line) => plain(line).trimEnd());
    expect(lines).toEqual([
      'furthest off  Wash stand        hardware back on               est 25 took  11',
      '              Wash stand        strip, insides                 est 65 took 138',
    ]);
  });

  it('counts in its title what a narrow terminal has room for', () => {
    const days = { since: at('02 12:00'), until: at('17 12:00') };
    const review = { pieces: 14, imported: 0, ...days };
    expect(reviewTitle(review, 'UTC', 80)).toBe('hours: 14 finished pieces, 2 Nov to 17 Nov');
    expect(reviewTitle(review, 'UTC', 40)).toBe('hours: 14 finished, 2 Nov to 17 Nov');
    const imported = { ...review, imported: 14 };
    expect(reviewTitle(imported, 'UTC', 80)).toBe(
      'hours: 14 finished pieces, all imported, 2 Nov to 17 Nov',
    );
  });
});

const off = (piece: string, step: string, est: number, minutes: number): StepOff => ({
  piece: { id: piece, number: null, name: piece },
  step: { name: step },
  expected: { minutes: est },
  minutes,
  note: null,
});
