import type { Step } from '../trade/schedule.ts';
import type { PlannedStep } from './piece.ts';

/** A planned step as a new one can be made from it: without its id, and without what became of it on its piece. */
export function plainStep(planned: PlannedStep): Omit<Step, 'id'> {
  const {
    id: _id,
    skipped: _skipped,
    copyOf: _copyOf,
    told: _told,
    leftOut: _leftOut,
    ...step
  } = planned;
  return step;
}
