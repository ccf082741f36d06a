import { describe, expect, it } from 'vitest';
import { at, sizes } from '../support/bench-of.ts';
import { deskOf } from '../support/desk-of.ts';
import { inventedWork } from './invented-work.ts';

const now = at('17 14:00');

function opened() {
  const work = inventedWork();
  const desk = deskOf({
    now,
    facts: work.shop.facts(),
    learns: true,
    start: { is: 'hours', piece: work.stool, at: 0, past: null },
  });
  return { desk, work };
}

describe('what a change does to expected minutes, before it is made', () => {
  it('stands beside dropping, trimming and leaving a session out', () => {
    const { desk, work } = opened();
    desk.press('w', '2');
    const rows = desk.rows();
    const effect =
      /sand bare, next grit (would become|stays at) \d\.\d times( instead of \d\.\d)?$/;
    expect(rows.find((row) => row.includes('it never was: drop it'))).toMatch(effect);
    expect(rows.find((row) => row.includes('trim it to 10:54'))).toMatch(effect);
    expect(rows.find((row) => row.includes('leave it out of learning'))).toMatch(effect);
    desk.press('6');
    expect(desk.text()).toContain('this session on 1 Beech stool left out of learning');
    const sessions = desk.port.bench.sessions.filter((each) => each.keptFromLearning === true);
    expect(sessions.map(({ start }) => start)).toEqual([at('17 10:20')]);
    desk.press('2');
    expect(desk.text()).toContain('6 let it teach again');
    expect(work.stool).toBe(sessions[0]?.targets[0]?.piece);
  });

  it('follows a time as it is written', () => {
    const { desk } = opened();
    desk.press('w', '2', '1');
    expect(desk.text()).not.toContain('With that');
    desk.type('11:05');
    expect(desk.text()).toMatch(
      /With that sand bare, next grit (would become|stays at) \d\.\d times/,
    );
    expect(desk.port.bench.sessions.every(({ first }) => first === null)).toBe(true);
  });

  it('is said by x, which means it when it is pressed again', () => {
    const { desk, work } = opened();
    desk.press('x');
    expect(desk.text()).toContain('x again: leave 1 Beech stool out of learning; ');
    expect(desk.port.piece(work.stool).keptFromLearning).toBeUndefined();
    desk.press('x');
    expect(desk.port.piece(work.stool).keptFromLearning).toBe(true);
    expect(desk.text()).toContain('1 Beech stool left out of learning');
    expect(desk.text()).toContain('Left out of learning. Why');
    expect(desk.text()).toContain('x let it teach');
    desk.press('x', 'x');
    expect(desk.port.piece(work.stool).keptFromLearning).toBeUndefined();
  });

  it('asks again after half a minute, and can be taken back', () => {
    const { desk, work } = opened();
    desk.press('x');
    desk.port.wait(31_000);
    desk.press('x');
    expect(desk.port.piece(work.stool).keptFromLearning).toBeUndefined();
    desk.press('x', '0');
    expect(desk.port.piece(work.stool).keptFromLearning).toBeUndefined();
  });

  it('is named beside the key that takes it back; what was done on the bench is not taken back from here', () => {
    const { desk } = opened();
    desk.press('0');
    const told = desk.text().replaceAll('\n', ' ');
    expect(told).toMatch(
      /Not taken back: the last deed was on the bench: .+\. Esc, and 0 there takes it back\./,
    );
    expect(desk.port.asked).toEqual([]);
    expect(told).not.toContain('0 take back');
    desk.press('x', 'x');
    expect(desk.text()).toContain('0 take back: leave 1 Beech stool out of learning');
    expect(desk.text([40, 24])).toContain('0 take back');
    desk.press('tab');
    expect(desk.text()).toContain('0 take back: leave 1 Beech stool out of learning');
    desk.press('0');
    expect(desk.text()).toContain('taken back: leave 1 Beech stool out of learning');
    desk.press('g');
    expect(desk.text()).toContain('brought back: leave 1 Beech stool out of learning');
  });

  it('is there for a finished piece among the past ranges, which Enter opens', () => {
    const { desk, work } = opened();
    desk.press('left', 'left', 'left', 'end', 'x', 'x');
    expect(desk.port.piece(work.bench).keptFromLearning).toBe(true);
    desk.press('enter');
    expect(desk.rows()[0]).toContain('hours: Hall bench');
  });

  it('fits every terminal', () => {
    const { desk } = opened();
    for (const keys of [['x'], ['w', '2'], ['1']]) {
      desk.press(...keys);
      for (const size of sizes)
        for (const row of desk.rows(size)) expect(row.length).toBeLessThanOrEqual(size[0]);
    }
  });
});
