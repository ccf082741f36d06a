import { describe, expect, it } from 'vitest';
import { minute } from '../../../src/tracker/time/index.ts';
import { forEitherWood } from '../../../src/tracker/windows/either-wood.ts';
import { stateAt, workOutWindow, type WindowRule } from '../../../src/tracker/windows/index.ts';

const aOn = { events: ['first-stroke'], agent: 'A', which: 'first' } as const;

/** A dwell that may be followed after `opens` and spoils after `closes` minutes. */
const dwell = (opens: number, closes: number): WindowRule => ({
  id: 'b-on',
  kind: 'chemical',
  verb: 'B on',
  scope: 'step',
  begins: aOn,
  stretches: [
    { meaning: 'wait', loss: 'costs nothing' },
    {
      from: { kind: 'stamp', stamp: aOn, plus: { ms: opens * minute } },
      meaning: 'go',
      loss: 'costs nothing',
    },
    {
      from: { kind: 'stamp', stamp: aOn, plus: { ms: closes * minute } },
      meaning: 'late',
      loss: 'spoils',
    },
  ],
  closedBy: { by: 'nothing' },
});

describe('a window while the wood is not known', () => {
  // Common practice, no source: A works 5 minutes on softwood, 10 on hardwood, and dries in 15 or 20.
  it('opens when both woods would let it, and is late when either would be', () => {
    const [rule] = forEitherWood([dwell(5, 15)], [dwell(10, 20)]);
    if (rule === undefined) throw new Error('no rule');
    const stamps = [{ event: 'first-stroke', agent: 'A', at: 0, fact: 'f' }];
    const sense = {
      spanEnd: (span: { ms: number }, from: number) => from + span.ms,
      nextClock: (from: number) => from,
    };
    const subject = { pieceId: 'p', stepId: 's', partId: null, pass: 1, section: null };
    const window = workOutWindow(
      { key: 'k', rule, subject },
      { stamps, checks: [], assumedStart: null },
      sense,
    );
    if (window === null) throw new Error('no window');
    const states = [4, 7, 9.9, 10, 14.9, 15].map((after) => stateAt(window, after * minute));
    expect(states).toEqual(['before', 'before', 'before', 'closing', 'closing', 'late']);
  });

  it('keeps a rule that only one wood has', () => {
    const only = { ...dwell(5, 15), id: 'only' };
    expect(forEitherWood([only], [dwell(10, 20)]).map(({ id }) => id)).toEqual(['b-on', 'only']);
  });
});
