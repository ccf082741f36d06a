import { describe, expect, test } from 'vitest';
import { pieceMinutes } from '../../../src/tracker/bench/index.ts';
import { given } from '../support/given-when-then.ts';
import { at } from '../support/instants.ts';
import { past, target } from '../support/past.ts';
import { twoCoats } from '../support/schedules.ts';
import { Workday } from '../support/workday.ts';

const two = past()
  .added('chest', twoCoats, { number: 1, name: 'Oak chest' })
  .added('table', twoCoats, { number: 2, name: 'Side table' });
const worked = two
  .pickedUp('s1', at('9:00'), [target('chest', 'coat 1')])
  .putDown('s1', at('9:30'))
  .pickedUp('s2', at('9:40'), [target('table', 'coat 1')])
  .putDown('s2', at('10:00'));
const correct = (session: string, more: object) =>
  ({ do: 'correct session', session, ...more }) as const;

describe('correcting a session', () => {
  test('wrong piece: other work, same times', () => {
    given(worked)
      .when(correct('s1', { targets: [target('table', 'scuff 2')] }), at('11:00'))
      .then({
        kind: 'session-corrected',
        body: {
          session: 's1',
          start: at('9:00'),
          end: at('9:30'),
          targets: [target('table', 'scuff 2')],
          dropped: false,
        },
      });
  });

  test('forgot to put down: an end for what is still in hand', () => {
    given(two.pickedUp('s1', at('9:00'), [target('chest', 'coat 1')]))
      .when(correct('s1', { end: at('12:00') }), at('13:00'))
      .then({ kind: 'session-corrected', body: { start: at('9:00'), end: at('12:00') } });
  });

  test('what was first recorded stays on record, over several corrections', () => {
    const day = new Workday();
    const chest = day.adds('Oak chest', twoCoats, at('8:00'));
    const table = day.adds('Side table', twoCoats, at('8:00'));
    day
      .does({ do: 'pick up', targets: [{ piece: chest, part: null }] }, at('9:00'))
      .does({ do: 'put down' }, at('9:30'));
    const [{ id, targets }] = day.bench.sessions as [(typeof day.bench.sessions)[number]];
    day.does({ do: 'correct session', session: id, start: at('9:10') }, at('10:00'));
    day.does(
      { do: 'correct session', session: id, targets: [target(table, 'coat 1')], end: at('9:20') },
      at('10:01'),
    );
    expect(day.bench.sessions[0]).toMatchObject({
      start: at('9:10'),
      end: at('9:20'),
      targets: [target(table, 'coat 1')],
      first: { start: at('9:00'), end: at('9:30'), targets },
    });
    const minutes = (piece: string) => pieceMinutes(day.bench, day.piece(piece), at('11:00'));
    expect([minutes(chest), minutes(table)]).toEqual([0, 10]);
    day.takesBack(at('10:02')).takesBack(at('10:02'));
    expect(day.bench.sessions[0]).toMatchObject({
      first: null,
      start: at('9:00'),
      end: at('9:30'),
    });
    expect([minutes(chest), minutes(table)]).toEqual([30, 0]);
  });

  test('dropped it never was, and counts no minutes; it can be taken up again', () => {
    const day = new Workday();
    const chest = day.adds('Oak chest', twoCoats, at('8:00'));
    day.does({ do: 'pick up', targets: [{ piece: chest, part: null }] }, at('9:00'));
    const { id } = day.bench.sessions[0]!;
    day.does({ do: 'correct session', session: id, dropped: true }, at('9:20'));
    expect(pieceMinutes(day.bench, day.piece(chest), at('9:30'))).toBe(0);
    expect(day.standing(chest, at('9:30')).session).toBeNull();
    day.does({ do: 'correct session', session: id, dropped: false }, at('9:40'));
    expect(pieceMinutes(day.bench, day.piece(chest), at('9:40'))).toBe(40);
  });

  test('two pairs of hands may overlap', () => {
    given(
      two
        .pickedUp('s1', at('9:00'), [target('chest')])
        .pickedUp('s2', at('9:10'), [target('table')], 2),
    )
      .when(correct('s2', { start: at('8:50') }), at('11:00'))
      .then({ kind: 'session-corrected', body: { start: at('8:50') } });
  });

  test('to no minutes at all', () => {
    given(worked)
      .when(correct('s1', { end: at('9:00') }), at('11:00'))
      .then({ kind: 'session-corrected', body: { start: at('9:00'), end: at('9:00') } });
  });

  test('what never was may lie anywhere', () => {
    given(worked)
      .when(correct('s1', { end: at('9:50'), dropped: true }), at('11:00'))
      .then({ kind: 'session-corrected', body: { end: at('9:50'), dropped: true } });
  });

  test('ends may touch', () => {
    given(worked)
      .when(correct('s1', { end: at('9:40') }), at('11:00'))
      .then({ kind: 'session-corrected', body: { end: at('9:40') } });
  });
});

describe('a correction that cannot be', () => {
  test.each([
    ['no such session', 's9', {}, 'Not corrected: there is no session "s9".'],
    [
      'over another',
      's1',
      { end: at('9:50') },
      'Not corrected: 2 Side table was in hand at that time. Correct that session first.',
    ],
    [
      'around another',
      's1',
      { start: at('8:00'), end: at('10:30') },
      /2 Side table was in hand at that time/,
    ],
    [
      'inside another',
      's2',
      { start: at('9:10'), end: at('9:20') },
      /1 Oak chest was in hand at that time/,
    ],
    [
      'ending before it begins',
      's1',
      { end: at('8:59') },
      'Not corrected: it would end before it begins.',
    ],
    [
      'beginning in the future',
      's1',
      { start: at('11:01') },
      'Not corrected: that time is still to come.',
    ],
    [
      'ending in the future',
      's2',
      { end: at('11:01') },
      'Not corrected: that time is still to come.',
    ],
    ['at no time', 's1', { start: Number.NaN }, 'Not corrected: that time is still to come.'],
    ['for nothing', 's1', { targets: [] }, 'Not corrected: a session is for at least one piece.'],
    [
      'for a piece that is none',
      's1',
      { targets: [target('stool')] },
      'Not corrected: there is no piece "stool".',
    ],
    [
      'for a step that is none',
      's1',
      { targets: [target('chest', 'caot 1')] },
      'Not corrected: 1 Oak chest has no step "caot 1".',
    ],
    [
      'for a part that is none',
      's1',
      { targets: [target('chest', 'coat 1', 'lid')] },
      'Not corrected: 1 Oak chest has no part "lid".',
    ],
  ])('%s', (_, session, more, words) => {
    given(worked).when(correct(session, more), at('11:00')).thenRefused(words);
  });

  test('over what is still in hand', () => {
    given(worked.pickedUp('s3', at('10:30'), [target('chest')]))
      .when(correct('s2', { end: at('10:31') }), at('11:00'))
      .thenRefused(/1 Oak chest was in hand at that time/);
  });

  test("a dropped session is in nobody's way", () => {
    const dropped = worked.told('session-corrected', {
      session: 's2',
      start: at('9:40'),
      end: at('10:00'),
      targets: [target('table')],
      dropped: true,
    });
    given(dropped)
      .when(correct('s1', { end: at('9:50') }), at('11:00'))
      .then({ kind: 'session-corrected', body: { end: at('9:50') } });
    given(
      dropped.told('session-corrected', {
        session: 's1',
        start: at('9:00'),
        end: at('9:50'),
        targets: [target('chest')],
        dropped: false,
      }),
    )
      .when(correct('s2', { dropped: false }), at('11:00'))
      .thenRefused(/1 Oak chest was in hand at that time/);
  });
});
