import { workOutWindow } from '../windows/evaluate.ts';
import type { EdgeSense, Window, WindowRule } from '../windows/model.ts';
import type { OddTimer } from './bench.ts';

/** An odd timer as a window like any other, so that it is drawn, ordered and pinged alike. */
export function timerWindow(timer: OddTimer, sense: EdgeSense): Window {
  const started = { events: ['first-stroke'], which: 'first' } as const;
  const rule: WindowRule = {
    id: 'timer',
    kind: 'timer',
    verb: timer.label,
    scope: 'step',
    begins: started,
    stretches: [
      { meaning: 'wait', loss: 'costs nothing' },
      {
        from: { kind: 'stamp', stamp: started, plus: { ms: timer.ms } },
        meaning: 'go',
        loss: 'costs nothing',
      },
    ],
    closedBy: { by: 'nothing' },
  };
  const subject = {
    pieceId: timer.piece ?? '',
    stepId: timer.id,
    partId: null,
    pass: 1,
    section: null,
  };
  const happenings = {
    stamps: [{ event: 'first-stroke', agent: null, at: timer.start, fact: timer.fact }],
    checks: [],
    assumedStart: null,
  };
  const window = workOutWindow(
    { key: `timer/${timer.id}`, rule, subject },
    happenings,
    sense,
    timer.closedAt,
  );
  if (window === null) throw new Error(`timer ${timer.id} has no start`);
  return window;
}
