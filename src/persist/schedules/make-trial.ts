import type { Milliseconds } from '../../tracker/time/index.ts';
import { trialWindow } from '../../tracker/trade/index.ts';
import type { WindowRule } from '../../tracker/windows/index.ts';
import { going, usualDelay, waiting, withChecks } from './stretches.ts';

/** The window in which a trial is judged: from its last stroke, once the time is over, until it was found ready. */
export function makeTrial(judgeAfter: Milliseconds): WindowRule {
  const last = { events: ['last-stroke'], which: 'last' } as const;
  const adds = usualDelay(judgeAfter);
  return {
    id: trialWindow,
    kind: 'coat',
    verb: 'judge the trial',
    scope: 'step',
    begins: last,
    stretches: [
      waiting,
      {
        from: withChecks({ kind: 'stamp', stamp: last, plus: { ms: judgeAfter } }, true, adds),
        ...going,
      },
    ],
    closedBy: { by: 'ready' },
    notYetAdds: adds,
  };
}
