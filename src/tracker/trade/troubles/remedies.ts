import { hour, minute, type Milliseconds } from '../../time/index.ts';
import type { WindowRule } from '../../windows/model.ts';
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

/** Shellac from which wax was taken lets go of the brush in an hour and takes a coat after two (common practice, no source). */
const shellacDries: WindowRule = {
  id: 'recoat',
  kind: 'coat',
  verb: 'next coat',
  milestone: 'recoat',
  scope: 'step',
  begins: { events: ['first-stroke'], which: 'first', assume: true },
  stretches: [
    { meaning: 'wait', loss: 'costs nothing' },
    {
      from: {
        kind: 'stamp',
        stamp: strokes,
        plus: {
          ms: 2 * hour,
          statedFor: { tempC: 23, rh: 50 },
          chemistry: 'evaporative',
          may: 'grow',
        },
      },
      meaning: 'go',
      loss: 'costs nothing',
    },
  ],
  closedBy: { by: 'needing step' },
  notYetAdds: 30 * minute,
};

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
      {
        id: 'left',
        kind: 'coat',
        verb: then,
        milestone: 'dry',
        scope: 'step',
        begins: { events: ['first-stroke'], which: 'first', assume: true },
        stretches: [
          { meaning: 'wait', loss: 'costs nothing' },
          {
            from: {
              kind: 'latest',
              of: [
                { kind: 'stamp', stamp: strokes, plus: { ms } },
                { kind: 'check', finding: 'not yet', plus: { ms: ms / 2 } },
              ],
            },
            meaning: 'go',
            loss: 'costs nothing',
          },
        ],
        closedBy: { by: 'needing step' },
        notYetAdds: ms / 2,
      },
    ],
  });

/** A step that waits for the one before it, which leaves the piece alone. */
export const afterLeaving = (name: string, stepClass: StepClass, more: Partial<RemedyStep> = {}) =>
  step(name, stepClass, { ...more, needs: ['dry'] });
