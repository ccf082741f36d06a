import { describe, expect, test } from 'vitest';
import { inHand, sessionHolding, takeBackName } from '../../../src/tracker/bench/index.ts';
import { given } from '../support/given-when-then.ts';
import { at } from '../support/instants.ts';
import { past, target } from '../support/past.ts';
import { twoCoats } from '../support/schedules.ts';
import { Workday } from '../support/workday.ts';

const three = past()
  .added('chest', twoCoats, { number: 1, name: 'Oak chest' })
  .added('table', twoCoats, { number: 2, name: 'Side table' })
  .added('stool', twoCoats, { number: 3, name: 'Beech stool' });
const withChest = three.pickedUp('s1', at('9:00'), [target('chest', 'coat 1')]);
const withBoth = withChest.pickedUp('s2', at('9:10'), [target('table', 'coat 1')], 2);

const pickUp = (
  piece: string,
  more: { readonly step?: string | null; readonly part?: string; readonly putDown?: string } = {},
) => {
  const { step, part = null, putDown } = more;
  return {
    do: 'pick up',
    targets: [{ piece, part, ...(step === undefined ? {} : { step }) }],
    ...(putDown === undefined ? {} : { putDown }),
  } as const;
};

describe('picking up', () => {
  test('takes the step that is next', () => {
    given(three.done('chest', 'coat 1', at('8:30')))
      .when(pickUp('chest'), at('9:00'))
      .then({
        kind: 'picked-up',
        body: { targets: [target('chest', 'coat 2')], hand: 1, session: 'this-press-s' },
      });
  });

  test('takes a step that is named, or work that belongs to none', () => {
    given(three)
      .when(pickUp('chest', { step: 'scuff 2' }), at('9:00'))
      .then({ kind: 'picked-up', body: { targets: [target('chest', 'scuff 2')] } });
    given(three)
      .when(pickUp('chest', { step: null }), at('9:00'))
      .then({ kind: 'picked-up', body: { targets: [target('chest')] } });
    given(three)
      .when(pickUp('chest', { step: null }), at('9:00'))
      .thenSays('picked up 1 Oak chest, other work');
  });

  test('puts a step that was skipped back in the list, and done acts on that step', () => {
    const day = new Workday();
    const chest = day.adds('Oak chest', twoCoats, at('8:00'));
    day.does({ do: 'skip step', piece: chest, step: 'scuff 2', skipped: true }, at('8:01'));
    day.does(pickUp(chest, { step: 'scuff 2' }), at('9:00'));
    expect(day.said).toBe('picked up 1 Oak chest, scuff 2, which was skipped');
    expect(day.piece(chest).steps.find(({ id }) => id === 'scuff 2')?.skipped).toBe(false);
    expect(takeBackName(day.bench)).toBe('pick up 1 Oak chest, scuff 2');
    day.done(chest, at('9:20'));
    expect(day.said).toMatch(/^scuff 2 done/);
    expect(day.piece(chest).finishes.map(({ step }) => step)).toEqual(['scuff 2']);
  });

  test('of a step that was done, done finishes that one again, and then the next', () => {
    const day = new Workday();
    const chest = day.adds('Oak chest', twoCoats, at('8:00'));
    day.does(pickUp(chest), at('8:05')).done(chest, at('8:30'));
    day.does({ do: 'put down' }, at('8:31'));
    day.does(pickUp(chest, { step: 'coat 1' }), at('9:00')).done(chest, at('9:20'));
    day.done(chest, at('9:30'));
    expect(day.piece(chest).finishes.map(({ step }) => step)).toEqual([
      'coat 1',
      'coat 1',
      'coat 2',
    ]);
  });

  test('with one pair of hands puts the other piece down at the same instant', () => {
    given(withChest)
      .when(pickUp('table'), at('9:30'))
      .then(
        { kind: 'put-down', body: { session: 's1' } },
        { kind: 'picked-up', body: { targets: [target('table', 'coat 1')], hand: 1 } },
      );
  });

  test('another step of the same piece changes sessions', () => {
    given(withChest)
      .when(pickUp('chest', { step: 'scuff 2' }), at('9:30'))
      .then(
        { kind: 'put-down', body: { session: 's1' } },
        { kind: 'picked-up', body: { targets: [target('chest', 'scuff 2')] } },
      );
  });

  test('several pieces may be picked up as one', () => {
    given(three)
      .when(
        {
          do: 'pick up',
          targets: [
            { piece: 'chest', part: null },
            { piece: 'stool', part: null },
          ],
        },
        at('9:00'),
      )
      .then({
        kind: 'picked-up',
        body: { targets: [target('chest', 'coat 1'), target('stool', 'coat 1')] },
      });
  });

  test('earlier, at the time that is given', () => {
    given(withChest)
      .when(pickUp('table'), at('9:30'), { at: at('9:20') })
      .then(
        { kind: 'put-down', body: { session: 's1' }, at: at('9:20') },
        { kind: 'picked-up', body: {}, at: at('9:20') },
      );
  });

  test('what is in hand already is refused', () => {
    given(withChest)
      .when(pickUp('chest'), at('9:30'))
      .thenRefused('Not picked up: 1 Oak chest is in hand already.');
  });

  test('nothing is nothing', () => {
    given(three)
      .when({ do: 'pick up', targets: [] }, at('9:00'))
      .thenRefused('Not picked up: no piece was named.');
  });

  test('before what is in hand was picked up', () => {
    given(withChest)
      .when(pickUp('table'), at('9:30'), { at: at('8:50') })
      .thenRefused('Not picked up: 1 Oak chest was picked up after that. Give a later time.');
  });

  test('while these hands were at something else', () => {
    given(withChest.putDown('s1', at('9:20')))
      .when(pickUp('table'), at('9:30'), { at: at('9:15') })
      .thenRefused(
        'Not picked up: 1 Oak chest was in hand then. Correct that session first (m, then w).',
      );
    given(withChest.putDown('s1', at('9:20')))
      .when(pickUp('table'), at('9:30'), { at: at('9:20') })
      .then({ kind: 'picked-up', body: { hand: 1 }, at: at('9:20') });
  });

  test('while these hands were said to be at something, which was taken away since', () => {
    const dropped = withChest.putDown('s1', at('9:20')).told('session-corrected', {
      session: 's1',
      start: at('9:00'),
      end: at('9:20'),
      targets: [target('chest', 'coat 1')],
      dropped: true,
    });
    given(dropped)
      .when(pickUp('table'), at('9:30'), { at: at('9:15') })
      .then({ kind: 'picked-up', body: { hand: 1 }, at: at('9:15') });
  });
});

describe("a helper's hands", () => {
  const two = { hands: 2 };

  test('take a second piece, and the first stays in hand', () => {
    given(withChest)
      .when(pickUp('table'), at('9:30'), two)
      .then({ kind: 'picked-up', body: { hand: 2 } });
  });

  test('a third is refused until one is named to be put down', () => {
    given(withBoth)
      .when(pickUp('stool'), at('9:30'), two)
      .thenRefused(
        'Not picked up: 1 Oak chest and 2 Side table are in hand. Name the one to put down for it.',
      );
    given(withBoth)
      .when(pickUp('stool', { putDown: 's1' }), at('9:30'), two)
      .then(
        { kind: 'put-down', body: { session: 's1' } },
        { kind: 'picked-up', body: { hand: 1 } },
      );
    given(withBoth)
      .when(pickUp('stool', { putDown: 's2' }), at('9:30'), two)
      .then(
        { kind: 'put-down', body: { session: 's2' } },
        { kind: 'picked-up', body: { hand: 2 } },
      );
  });

  test('which could be put down is told as data', () => {
    const { outcome } = given(withBoth).when(pickUp('stool'), at('9:30'), two);
    expect(outcome).toMatchObject({ ok: false, refusal: { couldPutDown: ['s1', 's2'] } });
    const other = given(withBoth).when(pickUp('nothing'), at('9:30'), two).outcome;
    expect(other).not.toHaveProperty('refusal.couldPutDown');
  });

  test.each(['next stamp', 'first stroke'] as const)(
    'a stroke that picks up asks the same: %s',
    (act) => {
      const stroke = { do: act, piece: 'stool', part: null } as const;
      const refused = given(withBoth).when(stroke, at('9:30'), two).outcome;
      expect(refused).toMatchObject({ ok: false, refusal: { couldPutDown: ['s1', 's2'] } });
      given(withBoth)
        .when({ ...stroke, putDown: 's2' }, at('9:30'), two)
        .then(
          { kind: 'put-down', body: { session: 's2' } },
          { kind: 'picked-up', body: { hand: 2, targets: [target('stool', 'coat 1')] } },
          { kind: 'stamped', body: { piece: 'stool', event: 'first-stroke' } },
        );
    },
  );

  test('what is named must be in hand', () => {
    given(withBoth)
      .when(pickUp('stool', { putDown: 's9' }), at('9:30'), two)
      .thenRefused(/what you want to put down is not in hand/);
  });

  test('free hands are used first, the lowest first', () => {
    given(withBoth.putDown('s1', at('9:20')))
      .when(pickUp('stool'), at('9:30'), two)
      .then({ kind: 'picked-up', body: { hand: 1 } });
  });

  test('a piece is never in two pairs of hands', () => {
    given(withBoth)
      .when(pickUp('table', { step: 'scuff 2' }), at('9:30'), two)
      .then(
        { kind: 'put-down', body: { session: 's2' } },
        { kind: 'picked-up', body: { hand: 2 } },
      );
    given(withBoth)
      .when(
        {
          do: 'pick up',
          targets: [
            { piece: 'chest', part: null },
            { piece: 'table', part: null },
          ],
        },
        at('9:30'),
        two,
      )
      .then(
        { kind: 'put-down', body: { session: 's1' } },
        { kind: 'put-down', body: { session: 's2' } },
        { kind: 'picked-up', body: { hand: 1 } },
      );
  });

  test('gone home: the next pick-up puts both down', () => {
    given(withBoth)
      .when(pickUp('stool'), at('9:30'))
      .then(
        { kind: 'put-down', body: { session: 's1' } },
        { kind: 'put-down', body: { session: 's2' } },
        { kind: 'picked-up', body: { hand: 1 } },
      );
  });

  test('earlier is refused only where those hands were busy', () => {
    const both = three
      .pickedUp('s1', at('9:00'), [target('chest', 'coat 1')], 1)
      .pickedUp('s2', at('9:05'), [target('table', 'coat 1')], 2)
      .putDown('s1', at('9:10'))
      .putDown('s2', at('9:25'));
    given(both)
      .when(pickUp('stool'), at('9:30'), { ...two, at: at('9:15') })
      .then({ kind: 'picked-up', body: { hand: 1 }, at: at('9:15') });
  });

  test('with room for one more than two', () => {
    given(withBoth)
      .when(pickUp('stool'), at('9:30'), { hands: 3 })
      .then({ kind: 'picked-up', body: { hand: 3 } });
  });
});

describe('putting down', () => {
  test('at the minute of the pick-up is a session of no length, and no refusal', () => {
    given(withChest)
      .when({ do: 'put down' }, at('9:30'), { at: at('9:00') })
      .then({ kind: 'put-down', body: { session: 's1' }, at: at('9:00') });
  });

  test('the only one in hand', () => {
    given(withChest)
      .when({ do: 'put down' }, at('9:30'))
      .then({ kind: 'put-down', body: { session: 's1' } });
    given(withChest).when({ do: 'put down' }, at('9:30')).thenSays('put down 1 Oak chest');
  });

  test('by piece or by session', () => {
    given(withBoth)
      .when({ do: 'put down', piece: 'table' }, at('9:30'))
      .then({ kind: 'put-down', body: { session: 's2' } });
    given(withBoth)
      .when({ do: 'put down', session: 's1' }, at('9:30'))
      .then({ kind: 'put-down', body: { session: 's1' } });
  });

  test.each([
    ['nothing in hand', three, {}, 'Not put down: nothing is in hand.'],
    [
      'two in hand and none named',
      withBoth,
      {},
      'Not put down: 1 Oak chest and 2 Side table are in hand. Say which.',
    ],
    [
      'another in hand',
      withChest,
      { piece: 'table' },
      'Not put down: 2 Side table is not in hand; 1 Oak chest is. Enter on 1.',
    ],
    [
      'none in hand',
      three,
      { piece: 'table' },
      'Not put down: 2 Side table is not in hand; nothing is.',
    ],
    [
      'a piece that is none',
      withChest,
      { piece: 'tabel' },
      'Not put down: there is no piece "tabel".',
    ],
    [
      'a session that is over',
      withChest.putDown('s1', at('9:10')),
      { session: 's1' },
      'Not put down: that is not in hand.',
    ],
  ])('%s', (_, before, which, words) => {
    given(before)
      .when({ do: 'put down', ...which }, at('9:30'))
      .thenRefused(words);
  });

  test('before it was picked up is refused', () => {
    given(withChest)
      .when({ do: 'put down' }, at('9:30'), { at: at('8:59') })
      .thenRefused('Not put down: 1 Oak chest was picked up after that. Give a later time.');
  });
});

describe('a clock that was set back', () => {
  test('lets go what was picked up in the future, with no minute', () => {
    const day = new Workday();
    const chest = day.adds('Oak chest', twoCoats, at('8:00'));
    day.does(pickUp(chest), at('10:00')).does({ do: 'put down' }, at('9:10'));
    expect(day.bench.sessions[0]).toMatchObject({ start: at('10:00'), end: at('10:00') });
  });

  test('a pick-up counts from where these hands last ended', () => {
    const day = new Workday();
    const chest = day.adds('Oak chest', twoCoats, at('8:00'));
    const table = day.adds('Side table', twoCoats, at('8:00'));
    day.does(pickUp(chest), at('10:00')).does({ do: 'put down' }, at('10:30'));
    day.does(pickUp(table), at('9:40'));
    expect(day.bench.sessions.at(-1)).toMatchObject({ start: at('10:30'), end: null });
    day.does(pickUp(chest), at('9:45'));
    expect(day.bench.sessions.map(({ start, end }) => [start, end])).toEqual([
      [at('10:00'), at('10:30')],
      [at('10:30'), at('10:30')],
      [at('10:30'), null],
    ]);
  });
});

test('who holds what', () => {
  const day = new Workday({ hands: 2 });
  const chest = day.adds('Oak chest', twoCoats, at('8:00'));
  const table = day.adds('Side table', twoCoats, at('8:00'));
  day.does(pickUp(table), at('9:00')).does(pickUp(chest), at('9:05'));
  expect(inHand(day.bench).map(({ targets }) => targets[0]?.piece)).toEqual([table, chest]);
  expect(sessionHolding(day.bench, chest)?.hand).toBe(2);
  day.does({ do: 'put down', piece: table }, at('9:10'));
  expect(sessionHolding(day.bench, table)).toBeNull();
});
