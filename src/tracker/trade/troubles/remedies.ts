import { hour, minute, type Milliseconds } from '../../time/index.ts';
import type { Edge, WindowRule } from '../../windows/model.ts';
import type { StepClass } from '../schedule.ts';
import type { Again, RemedyStep } from './trouble.ts';
import { usualStep } from '../usual-work.ts';

// What remedies are made of. All of them, and their waits: common practice, no source; the label in the hand comes first.

/** A step of the usual kind for its class; what differs comes in `more`. */
export const step = (
  name: string,
  stepClass: StepClass,
  more: Partial<RemedyStep> = {},
): RemedyStep => ({
  ...usualStep(name, stepClass),
  ...more,
});

/** The step that had the trouble once more; `how` stands behind its name. */
export const again = (how = 'again'): Again => ({ again: how });

const strokes = { events: ['last-stroke'], which: 'last' } as const;

/** A wait from the first stroke on until an edge, after which the step that needs it may begin. */
const waitUntil = ({ id, verb, milestone, notYetAdds }: WaitWords, opens: Edge): WindowRule => ({
  id,
  kind: 'coat',
  verb,
  milestone,
  scope: 'step',
  begins: { events: ['first-stroke'], which: 'first', assume: true },
  stretches: [
    { meaning: 'wait', loss: 'costs nothing' },
    { from: opens, meaning: 'go', loss: 'costs nothing' },
  ],
  closedBy: { by: 'needing step' },
  notYetAdds,
});

type WaitWords = Required<Pick<WindowRule, 'id' | 'verb' | 'milestone' | 'notYetAdds'>>;

/** Shellac from which wax was taken lets go of the brush in an hour and takes a coat after two (common practice, no source). */
const shellacDries = waitUntil(
  { id: 'recoat', verb: 'next coat', milestone: 'recoat', notYetAdds: 30 * minute },
  {
    kind: 'stamp',
    stamp: strokes,
    plus: {
      ms: 2 * hour,
      statedFor: { tempC: 23, rh: 50 },
      chemistry: 'evaporative',
      may: 'grow',
    },
  },
);

/** A coat of shellac, which keeps what is below from what comes on top. */
export const shellac = (name: string): RemedyStep =>
  step(name, 'prime', {
    needs: ['scuff'],
    stamps: [{ event: 'first-stroke', says: 'first stroke on' }],
    windows: [shellacDries],
    fumes: true,
    cautions: [
      'Label first. Alcohol in shellac burns: no flame, spark or heater, fresh air, organic-vapour mask.',
    ],
  });

export const solventWash = {
  fumes: true,
  cautions: ['Label first. Wash solvent burns: no flame or spark, fresh air, organic-vapour mask.'],
} as const;

/** Nothing to do but let it be for a while: the time counts from "done", and the next remedy waits for it. */
export const leave = (name: string, ms: Milliseconds, then: string): RemedyStep =>
  step(name, 'other', {
    minutes: { typical: 2, low: 1, high: 5 },
    windows: [
      waitUntil(
        { id: 'left', verb: then, milestone: 'dry', notYetAdds: ms / 2 },
        {
          kind: 'latest',
          of: [
            { kind: 'stamp', stamp: strokes, plus: { ms } },
            { kind: 'check', finding: 'not yet', plus: { ms: ms / 2 } },
          ],
        },
      ),
    ],
  });

/** A step that waits for the one before it, which leaves the piece alone. */
export const afterLeaving = (name: string, stepClass: StepClass, more: Partial<RemedyStep> = {}) =>
  step(name, stepClass, { ...more, needs: ['dry'] });
