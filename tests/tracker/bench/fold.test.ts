import { describe, expect, test } from 'vitest';
import { foldBench, type PieceDescription } from '../../../src/tracker/bench/index.ts';
import { at } from '../support/instants.ts';
import { past, target } from '../support/past.ts';
import { twoCoats } from '../support/schedules.ts';

describe('folding facts', () => {
  test('of nothing gives an empty bench', () => {
    expect(foldBench([])).toEqual({
      pieces: new Map(),
      sessions: [],
      timers: [],
      pots: [],
      touches: new Map(),
      trail: { done: [], takenBack: [] },
      groups: new Map(),
      lastShut: null,
      clockSteps: [],
    });
  });

  test('about what is not there changes nothing and fails nowhere', () => {
    const lost = past()
      .described('nobody', { wood: 'hard' })
      .parts('nobody', 'top')
      .stamped('nobody', 'coat 1', 'first-stroke', at('9:00'))
      .done('nobody', 'coat 1', at('9:30'))
      .putDown('no session', at('9:30'))
      .told('step-moved', { piece: 'nobody', step: 'x', before: 'y' })
      .told('hold-lifted', { piece: 'nobody' })
      .told('timer-closed', { timer: 'none' })
      .told('stamp-moved', { fact: 'none', to: at('9:00') })
      .told('session-corrected', {
        session: 'none',
        start: 0,
        end: 1,
        targets: [],
        dropped: false,
      });
    const bench = foldBench(lost.facts);
    expect([bench.pieces.size, bench.sessions.length, bench.timers.length]).toEqual([0, 0, 0]);
    const known = past().added('chest', twoCoats);
    const before = foldBench(known.facts).pieces.get('chest');
    const odd = known
      .told('step-moved', { piece: 'chest', step: 'nowhere', before: null })
      .told('step-skipped', { piece: 'chest', step: 'nowhere', skipped: true })
      .told('step-reworded', { piece: 'chest', step: 'nowhere', name: 'x' });
    expect(foldBench(odd.facts).pieces.get('chest')).toEqual(before);
  });

  test('a description leaves alone what it does not tell', () => {
    const facts = past()
      .added('chest', twoCoats)
      .described('chest', { wood: 'hard' })
      .described('chest', { wood: undefined, yearMade: 1911 } as unknown as PieceDescription);
    expect(foldBench(facts.facts).pieces.get('chest')).toMatchObject({
      wood: 'hard',
      yearMade: 1911,
    });
  });

  test('a step put before one that is gone comes last', () => {
    const facts = past()
      .added('chest', twoCoats)
      .told('step-inserted', {
        piece: 'chest',
        step: { ...twoCoats.steps[0]!, id: 'new' },
        before: 'gone',
      });
    expect(foldBench(facts.facts).pieces.get('chest')?.steps.at(-1)?.id).toBe('new');
  });

  test('a start moved past its end makes a session without minutes, never a negative one', () => {
    const session = past()
      .added('chest', twoCoats)
      .pickedUp('s', at('9:00'), [target('chest')])
      .putDown('s', at('9:30'));
    const start = session.told('stamp-moved', { fact: 'fact-2', to: at('10:00') });
    expect(foldBench(start.facts).sessions[0]).toMatchObject({
      start: at('9:30'),
      end: at('9:30'),
    });
    const end = session.told('stamp-moved', { fact: 'fact-3', to: at('8:00') });
    expect(foldBench(end.facts).sessions[0]).toMatchObject({ start: at('9:00'), end: at('9:00') });
  });
});
