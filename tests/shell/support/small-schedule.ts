import type { FinishingSchedule, Step } from '../../../src/tracker/trade/index.ts';
import { minute } from '../../../src/tracker/time/index.ts';

const minutes = { typical: 30, low: 20, high: 50 };
const plain: Omit<Step, 'id' | 'name' | 'stepClass'> = {
  minutes,
  driver: 'fixed',
  setupMinutes: 5,
  stamps: [],
  windows: [],
  needs: [],
  cautions: [],
};

/** Sand; then a dwell of five minutes that spoils after ten. The figures are the test's own. */
export const smallSchedule: FinishingSchedule = {
  id: 'small',
  name: 'Small',
  summary: 'for tests',
  hash: 'small',
  products: {},
  steps: [
    { ...plain, id: 'sand', name: 'sand', stepClass: 'sand bare, first grit' },
    {
      ...plain,
      id: 'dwell',
      name: 'A, then B',
      stepClass: 'bleach',
      stamps: [
        { event: 'first-stroke', agent: 'A', says: 'A, first stroke on' },
        { event: 'first-stroke', agent: 'B', says: 'B, first stroke on' },
      ],
      windows: [
        {
          id: 'b-on',
          kind: 'chemical',
          verb: 'B on',
          scope: 'step',
          begins: { events: ['first-stroke'], agent: 'A', which: 'first' },
          stretches: [
            { meaning: 'wait', loss: 'costs nothing' },
            {
              from: {
                kind: 'stamp',
                stamp: { events: ['first-stroke'], agent: 'A', which: 'first' },
                plus: { ms: 5 * minute },
              },
              meaning: 'go',
              loss: 'costs nothing',
            },
            {
              from: {
                kind: 'stamp',
                stamp: { events: ['first-stroke'], agent: 'A', which: 'first' },
                plus: { ms: 10 * minute },
              },
              meaning: 'late',
              loss: 'spoils',
              says: 'rinse, dry, start over',
            },
          ],
          closedBy: {
            by: 'stamp',
            stamp: { events: ['first-stroke'], agent: 'B', which: 'first' },
          },
          gear: 'gloves, goggles',
        },
      ],
    },
  ],
};
