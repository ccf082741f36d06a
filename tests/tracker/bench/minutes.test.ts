import { describe, expect, test } from 'vitest';
import {
  foldBench,
  minutesOn,
  pieceMinutes,
  sessionMinutes,
  sessionsOf,
  stepMinutes,
  type Bench,
} from '../../../src/tracker/bench/index.ts';
import { at } from '../support/instants.ts';
import { past, target, type Past } from '../support/past.ts';
import { twoCoats } from '../support/schedules.ts';

const two = past().added('chest', twoCoats).added('table', twoCoats, { number: 2 });
const on = (bench: Bench, piece: string, clock = '12:00') =>
  pieceMinutes(bench, bench.pieces.get(piece)!, at(clock));
const folded = (facts: Past) => foldBench(facts.facts);

describe('minutes', () => {
  test('run while a piece is in hand', () => {
    const bench = folded(two.pickedUp('s', at('9:00'), [target('chest', 'coat 1')]));
    expect(on(bench, 'chest', '9:00')).toBe(0);
    expect(on(bench, 'chest', '9:25:30')).toBe(25.5);
    expect(on(bench, 'table', '9:25:30')).toBe(0);
  });

  test('stop when it is put down, and add up over sessions', () => {
    const bench = folded(
      two
        .pickedUp('s1', at('9:00'), [target('chest', 'coat 1')])
        .putDown('s1', at('9:30'))
        .pickedUp('s2', at('10:00'), [target('chest', 'coat 2')])
        .putDown('s2', at('10:12')),
    );
    const chest = bench.pieces.get('chest')!;
    expect(on(bench, 'chest')).toBe(42);
    expect(stepMinutes(bench, chest, 'coat 1', at('12:00'))).toBe(30);
    expect(stepMinutes(bench, chest, 'coat 2', at('12:00'))).toBe(12);
    expect(stepMinutes(bench, chest, 'scuff 2', at('12:00'))).toBe(0);
    expect(sessionsOf(bench, 'chest').map(({ id }) => id)).toEqual(['s1', 's2']);
  });

  test('of work that belongs to no step', () => {
    const bench = folded(two.pickedUp('s', at('9:00'), [target('chest')]).putDown('s', at('9:20')));
    expect(stepMinutes(bench, bench.pieces.get('chest')!, null, at('12:00'))).toBe(20);
  });

  test('are never negative: a clock that was set back gives none', () => {
    const bench = folded(two.pickedUp('s', at('9:00'), [target('chest')]));
    expect(on(bench, 'chest', '8:00')).toBe(0);
    const ended = folded(two.pickedUp('s', at('9:00'), [target('chest')]).putDown('s', at('8:30')));
    expect(sessionMinutes(ended.sessions[0]!, at('12:00'))).toBe(0);
  });

  test('of several pieces worked together are shared out by size', () => {
    const together = two
      .described('chest', { areaM2: 3 })
      .described('table', { areaM2: 1 })
      .pickedUp('s', at('9:00'), [target('chest', 'coat 1'), target('table', 'coat 1')])
      .putDown('s', at('9:40'));
    expect([on(folded(together), 'chest'), on(folded(together), 'table')]).toEqual([30, 10]);
  });

  test('a piece whose size nobody told counts as the reference piece', () => {
    const together = two
      .pickedUp('s', at('9:00'), [target('chest', 'coat 1'), target('table', 'coat 1')])
      .putDown('s', at('9:40'));
    expect([on(folded(together), 'chest'), on(folded(together), 'table')]).toEqual([20, 20]);
  });

  test('of one piece twice and another once are shared two to one', () => {
    const targets = [
      target('chest', 'coat 1'),
      target('chest', 'coat 2'),
      target('table', 'coat 1'),
    ];
    const bench = folded(two.pickedUp('s', at('9:00'), targets).putDown('s', at('9:30')));
    expect(on(bench, 'chest')).toBeCloseTo(20, 9);
    expect(on(bench, 'table')).toBeCloseTo(10, 9);
  });

  test('of two steps of one piece in one session are halved', () => {
    const bench = folded(
      two
        .pickedUp('s', at('9:00'), [target('chest', 'coat 1'), target('chest', 'coat 2')])
        .putDown('s', at('9:40')),
    );
    const chest = bench.pieces.get('chest')!;
    expect(on(bench, 'chest')).toBe(40);
    expect([
      stepMinutes(bench, chest, 'coat 1', at('12:00')),
      stepMinutes(bench, chest, 'coat 2', at('12:00')),
    ]).toEqual([20, 20]);
  });

  test("a helper's minutes count beside one's own", () => {
    const bench = folded(
      two
        .pickedUp('s1', at('9:00'), [target('chest')], 1)
        .pickedUp('s2', at('9:00'), [target('table')], 2)
        .putDown('s1', at('9:30'))
        .putDown('s2', at('9:20')),
    );
    expect([on(bench, 'chest'), on(bench, 'table')]).toEqual([30, 20]);
    expect(minutesOn(bench.sessions[0]!, bench.pieces.get('table')!, bench, at('12:00'))).toBe(0);
  });
});
