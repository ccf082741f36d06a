import type { Expectation } from '../../tracker/bench/index.ts';
import type { ClassHours, PieceHours, StepHours, Verdict } from '../../tracker/estimate/index.ts';
import type { Role } from '../drawing/index.ts';

/** One line of a piece's hours, whether it is a step or a class of steps. */
export type PieceRow = {
  readonly name: string;
  readonly expected: Expectation;
  readonly minutes: number | null;
  /** `inside`, `over`, `so far`: at most seven cells. */
  readonly verdict: string;
  readonly role: Role;
  readonly steps: readonly StepHours[];
};

export function pieceRows(hours: PieceHours, by: 'class' | 'step'): readonly PieceRow[] {
  return by === 'step' ? hours.steps.map(rowOfStep) : hours.classes.map(rowOfClass);
}

const rowOfStep = (step: StepHours): PieceRow => ({
  name: step.step.name,
  expected: step.expected,
  minutes: step.minutes,
  verdict: step.verdict ?? unjudged(step),
  role: roleOf(step.verdict),
  steps: [step],
});

function rowOfClass(own: ClassHours): PieceRow {
  const [first] = own.steps;
  return {
    name: own.stepClass,
    expected: own.expected,
    minutes: own.minutes,
    verdict: own.verdict ?? (first === undefined ? '' : unjudged(furthestOn(own.steps) ?? first)),
    role: roleOf(own.verdict),
    steps: own.steps,
  };
}

/** The step that tells most of a class none of which can be judged. */
const furthestOn = (steps: readonly StepHours[]): StepHours | undefined =>
  steps.find(({ state }) => state === 'begun') ?? steps.find(({ state }) => state === 'done');

function unjudged({ state, minutes }: StepHours): string {
  switch (state) {
    case 'done':
      return minutes === null ? 'untimed' : '';
    case 'begun':
      return minutes === null ? 'begun' : 'so far';
    case 'skipped':
      return 'skipped';
    case 'to do':
      return '';
  }
}

export function roleOf(verdict: Verdict): Role {
  if (verdict === 'over') return 'work lost';
  return verdict === 'under' ? 'go' : 'text';
}
