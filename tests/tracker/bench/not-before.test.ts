import { expect, test } from 'vitest';
import { given } from '../support/given-when-then.ts';
import { at } from '../support/instants.ts';
import { past, target } from '../support/past.ts';
import { twoCoats } from '../support/schedules.ts';

const chest = past().added('chest', twoCoats, { name: 'Oak chest', at: at('7:00') });
const inHand = chest.pickedUp('s', at('9:00'), [target('chest', 'coat 1')]);

test.each(['next stamp', 'first stroke', 'done'] as const)(
  'what is in hand is not stamped before it was picked up: %s',
  (act) => {
    const asked = { do: act, piece: 'chest', part: null } as const;
    given(inHand)
      .when(asked, at('9:10'), { at: at('8:50') })
      .thenRefused(
        /: 1 Oak chest was picked up after that\. Give a later time, or correct that session first \(m, then w\)\.$/,
      );
    expect(given(inHand).when(asked, at('9:10'), { at: at('9:00') }).outcome.ok).toBe(true);
  },
);

test('it may be where the piece was in hand at that time as well', () => {
  const again = chest
    .pickedUp('first', at('8:00'), [target('chest', 'coat 1')])
    .putDown('first', at('8:30'))
    .pickedUp('s', at('9:00'), [target('chest', 'coat 1')]);
  const stroke = { do: 'first stroke', piece: 'chest', part: null } as const;
  for (const then of ['8:20', '8:30'])
    expect(given(again).when(stroke, at('9:10'), { at: at(then) }).outcome.ok).toBe(true);
  given(again)
    .when(stroke, at('9:10'), { at: at('8:40') })
    .thenRefused(/picked up after that/);
});

test('what is not in hand is picked up at that time', () => {
  given(chest)
    .when({ do: 'first stroke', piece: 'chest', part: null }, at('9:10'), { at: at('8:50') })
    .then(
      { kind: 'picked-up', body: {}, at: at('8:50') },
      { kind: 'stamped', body: {}, at: at('8:50') },
    );
});
