import { describe, expect, test } from 'vitest';
import { given } from '../support/given-when-then.ts';
import { at } from '../support/instants.ts';
import { past } from '../support/past.ts';
import { aerosol } from '../support/schedules.ts';

describe('the whole piece, where its parts were stamped on their own', () => {
  const parted = past()
    .added('chest', aerosol, { name: 'Oak chest' })
    .parts('chest', 'top', 'case');
  const pass1 = parted
    .stamped('chest', 'spray 1', 'first-stroke', at('9:00'), { part: 'top' })
    .stamped('chest', 'spray 1', 'last-stroke', at('9:05'), { part: 'top' })
    .stamped('chest', 'spray 1', 'first-stroke', at('9:06'), { part: 'case' })
    .stamped('chest', 'spray 1', 'last-stroke', at('9:12'), { part: 'case' });
  const whole = { piece: 'chest', part: null } as const;

  test('has what each of its parts has, so the next pass is next', () => {
    given(pass1)
      .when({ do: 'next stamp', ...whole }, at('9:30'))
      .then(
        { kind: 'picked-up', body: {} },
        { kind: 'stamped', body: { part: null, event: 'first-stroke', pass: 2 } },
      );
    given(pass1.stamped('chest', 'spray 1', 'first-stroke', at('9:30'), { part: 'top', pass: 2 }))
      .when({ do: 'next stamp', ...whole }, at('9:31'))
      .then(
        { kind: 'picked-up', body: {} },
        { kind: 'stamped', body: { part: null, event: 'first-stroke', pass: 2 } },
      );
  });

  test('has nothing that one of them lacks', () => {
    given(parted.stamped('chest', 'spray 1', 'first-stroke', at('9:00'), { part: 'top' }))
      .when({ do: 'next stamp', ...whole }, at('9:30'))
      .then(
        { kind: 'picked-up', body: {} },
        { kind: 'stamped', body: { part: null, event: 'first-stroke', pass: 1 } },
      );
  });

  test.each(['next stamp', 'first stroke', 'done'] as const)(
    'is not stamped before what a part has: %s',
    (act) => {
      given(pass1)
        .when({ do: act, ...whole }, at('9:30'), { at: at('9:10') })
        .thenRefused(/1 Oak chest has a later stamp on that step/);
      const top = { do: act, piece: 'chest', part: 'top' } as const;
      expect(given(pass1).when(top, at('9:30'), { at: at('9:10') }).outcome.ok).toBe(true);
    },
  );

  test('is done at the furthest pass, and each part with the pass it is in', () => {
    const further = pass1.stamped('chest', 'spray 1', 'first-stroke', at('9:30'), {
      part: 'top',
      pass: 2,
    });
    given(further)
      .when({ do: 'done', ...whole }, at('9:40'))
      .then({ kind: 'step-done', body: { part: null, pass: 2 } });
  });
});
