import { describe, expect, it } from 'vitest';
import type { Session } from '../../../src/tracker/bench/index.ts';
import { at, sizes } from '../support/bench-of.ts';
import { deskOf, type DrivenDesk } from '../support/desk-of.ts';
import { inventedWork, type Invented } from './invented-work.ts';

const now = at('17 14:00');

function opened(work: Invented = inventedWork()): {
  readonly desk: DrivenDesk;
  readonly work: Invented;
} {
  const desk = deskOf({
    now,
    facts: work.shop.facts(),
    start: { is: 'hours', piece: work.stool, at: 0, past: null },
  });
  return { desk, work };
}

/** The session that was left running over lunch: sand 120, 10:20 to 13:05. */
const lunch = (desk: DrivenDesk): Session => {
  const found = desk.port.bench.sessions.find(({ start, first }) =>
    [start, first?.start].includes(at('17 10:20')),
  );
  if (found === undefined) throw new Error('no session over lunch');
  return found;
};

describe('correcting a session', () => {
  it('lists the sessions of the piece, the newest first', () => {
    const { desk } = opened();
    desk.press('w');
    expect(desk.rows().slice(0, 7)).toEqual([
      'correct a session: 1 Beech stool',
      '',
      '> 1 Tue 17 Nov, 13:10 to 13:31, 21 min   sand 150',
      '  2 Tue 17 Nov, 10:20 to 13:05, 165 min  sand 120',
      '  3 Tue 17 Nov, 09:00 to 09:45, 45 min   sand 100',
      '  4 Mon 16 Nov, 09:47 to 11:00, 73 min   strip, test scrape',
      '  5 Mon 16 Nov, 09:10 to 09:28, 18 min   look over, lead test',
    ]);
  });

  it('gives it another end by time of day, and keeps what was first recorded', () => {
    const { desk } = opened();
    desk.press('w', '2', '1');
    desk.type('11:05');
    expect(desk.text()).toContain('end  11:05_');
    desk.press('enter');
    expect(lunch(desk)).toMatchObject({
      start: at('17 10:20'),
      end: at('17 11:05'),
      first: { start: at('17 10:20'), end: at('17 13:05') },
    });
    expect(desk.text()).toContain('session on 1 Beech stool corrected');
    expect(desk.text()).toContain(
      '2 Tue 17 Nov, 10:20 to 11:05, 45 min  sand 120; first recorded 10:20 to 13:05',
    );
  });

  it('moves an end by minutes, and a beginning', () => {
    const { desk } = opened();
    desk.press('w', '2', '1');
    desk.type('-15');
    desk.press('enter', '2', '2');
    desk.type('+10');
    desk.press('enter');
    expect(lunch(desk)).toMatchObject({ start: at('17 10:30'), end: at('17 12:50') });
  });

  it('begins where the session before ended, when the minute is the same', () => {
    const work = inventedWork();
    const { shop, rack, stool } = work;
    const seconds = (clock: string, more: number): number => at(`17 ${clock}`) + more * 1000;
    shop.act({ do: 'pick up', targets: [{ piece: rack, part: null }] }, seconds('13:40', 0));
    shop.act({ do: 'pick up', targets: [{ piece: stool, part: null }] }, seconds('13:45', 20));
    shop.act({ do: 'put down' }, seconds('13:55', 0));
    const { desk } = opened(work);
    desk.press('w', '1', '2');
    desk.type('13:45');
    desk.press('enter');
    expect(desk.port.bench.sessions.at(-1)?.start).toBe(seconds('13:45', 20));
    expect(desk.text()).toContain('corrected');
  });

  it('is refused where another session was, or a time is none, and the field stays', () => {
    const { desk } = opened();
    const before = lunch(desk);
    desk.press('w', '2', '1');
    for (const [typed, says] of [
      ['25:00', 'Not corrected: "25:00" is no time of day.'],
      ['', 'Not corrected: no time given.'],
      ['13:20', 'Not corrected: 1 Beech stool was in hand at that time.'],
      ['23:00', 'Not corrected: that time is still to come.'],
      ['09:00', 'Not corrected: it would end before it begins.'],
      ['-90x', 'Not corrected:'],
    ] as const) {
      desk.type(typed);
      desk.press('enter');
      expect(desk.text()).toContain(says);
      expect(desk.text()).toContain(`end  ${typed}_`);
      for (const _ of typed) desk.press('backspace');
    }
    expect(lunch(desk)).toEqual(before);
  });

  it('moves it to another piece, to the step that one had come to', () => {
    const { desk, work } = opened();
    desk.press('w', '2', '3');
    expect(desk.text()).toContain('> 1 1 Beech stool, another step');
    desk.press('2');
    expect(desk.text()).toContain('which step of 2 Book rack?');
    expect(desk.text()).toContain('> 1 look over, lead test');
    desk.press('3');
    expect(lunch(desk).targets).toEqual([{ piece: work.rack, part: null, step: 'sand-100' }]);
    expect(desk.text()).not.toContain('10:20 to 13:05');
    desk.press('escape', '2');
    expect(desk.rows()[0]).toContain('recorded 2 h 45 in 1 session');
  });

  it('moves it to another step of the same piece, or to none', () => {
    const { desk, work } = opened();
    desk.press('w', '2', '3', '1');
    expect(desk.text()).toContain('> 4 sand 120');
    desk.press('3');
    expect(lunch(desk).targets).toEqual([{ piece: work.stool, part: null, step: 'sand-100' }]);
    desk.press('2', '3', '1', 'end');
    for (let down = 0; down < 12; down += 1) desk.press('down');
    desk.press('enter');
    expect(lunch(desk).targets).toEqual([{ piece: work.stool, part: null, step: null }]);
  });

  it('drops it, counts it again, and takes all of that back key by key', () => {
    const { desk } = opened();
    desk.press('w');
    expect(desk.text()).not.toContain('take back');
    desk.press('2', '4');
    expect(lunch(desk).dropped).toBe(true);
    expect(desk.text()).toMatch(/0: take back: correction of .* on 1 Beech stool/);
    expect(desk.text()).toContain('10:20 to 13:05, dropped');
    desk.press('2');
    expect(desk.text()).toContain('> 1 it was: count it again');
    desk.press('1');
    expect(lunch(desk).dropped).toBe(false);
    desk.press('0');
    expect(lunch(desk).dropped).toBe(true);
    expect(desk.text()).toContain('taken back');
    desk.press('0');
    expect(lunch(desk)).toMatchObject({ dropped: false, first: null });
    desk.press('g');
    expect(lunch(desk).dropped).toBe(true);
  });

  it('goes one question back with each Esc', () => {
    const { desk } = opened();
    desk.press('w', '2', '3', '2');
    const titles = [];
    for (let press = 0; press < 4; press += 1) {
      desk.press('escape');
      titles.push(desk.rows()[0]?.split(': ').at(-1)?.split('  ')[0]);
    }
    expect(titles).toEqual([
      'which piece was it?',
      'what was it?',
      '1 Beech stool',
      '1 Beech stool',
    ]);
    expect(desk.rows()[0]).toContain('hours:');
  });

  it('fits narrow and wide terminals at every question', () => {
    for (const size of sizes) {
      const { desk } = opened();
      for (const keys of [['w'], ['2'], ['3'], ['2'], ['escape', 'escape', '1']]) {
        desk.press(...keys);
        expect(desk.rows(size).every((row) => row.length <= size[0])).toBe(true);
        // The question itself is never cut away.
        expect(desk.text(size)).toMatch(/^(> \d|end {2})/m);
      }
    }
  });
});

describe('a session left running', () => {
  const offer = /no key all that time\. Left\s+running\? y:\s+trim to 10:54, n: it is right/;

  it('is pointed out with the trim that is on offer, and nothing is changed by itself', () => {
    const { desk } = opened();
    const before = desk.port.bench;
    for (const size of [
      [80, 24],
      [40, 20],
      [120, 36],
    ] as const)
      expect(desk.text(size).replaceAll('\n', ' ')).toMatch(offer);
    desk.press('down', 's');
    expect(desk.port.bench).toEqual(before);
    expect(desk.port.asked).toEqual([]);
  });

  it('is trimmed with y; 0 takes that back, and then it is asked again', () => {
    const { desk } = opened();
    desk.press('y');
    expect(lunch(desk)).toMatchObject({ end: at('17 10:54'), first: { end: at('17 13:05') } });
    expect(desk.text()).not.toContain('Left running?');
    desk.press('0');
    expect(lunch(desk)).toMatchObject({ end: at('17 13:05'), first: null });
    expect(desk.text().replaceAll('\n', ' ')).toMatch(offer);
  });

  it('is kept with n, and not asked for again', () => {
    const { desk } = opened();
    desk.press('n');
    expect(lunch(desk)).toMatchObject({ start: at('17 10:20'), end: at('17 13:05') });
    expect(desk.text()).not.toContain('Left running?');
    desk.press('y');
    expect(lunch(desk).end).toBe(at('17 13:05'));
  });

  it('is on offer where the session is corrected, too', () => {
    const { desk } = opened();
    desk.press('w', '2');
    expect(desk.text()).toContain('5 left running: trim it to 10:54');
    desk.press('5');
    expect(lunch(desk).end).toBe(at('17 10:54'));
  });
});
