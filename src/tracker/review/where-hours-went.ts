import { finishedAt, type FinishedHours } from '../estimate/index.ts';
import { minutesBetween } from '../time/index.ts';

/** What the time of finished pieces went into, in minutes. */
export type WhereHoursWent = {
  readonly pieces: number;
  /** Hands on the work. */
  readonly working: number;
  readonly setup: number;
  /** Setup was partly taken off by the schedules' share. */
  readonly about: boolean;
  /** Work that belongs to no step. */
  readonly other: number;
  /** From coming in to leaving or the last step, less what was in hand: drying, curing, nights, waiting for hands. */
  readonly waiting: number;
};

/** Hours from elsewhere tell neither setup nor waiting apart: they are left out. */
export function whereHoursWent({ pieces }: Pick<FinishedHours, 'pieces'>): WhereHoursWent {
  const own = pieces.filter(({ imported }) => imported !== true);
  const sum = (each: (hours: (typeof own)[number]) => number): number =>
    own.reduce((all, hours) => all + each(hours), 0);
  return {
    pieces: own.length,
    working: sum(({ steps }) => steps.reduce((all, { minutes }) => all + (minutes ?? 0), 0)),
    setup: sum(({ setup }) => setup.minutes),
    about: own.some(({ setup }) => setup.about),
    other: sum(({ other }) => other),
    waiting: sum(({ piece, recorded }) =>
      Math.max(0, minutesBetween(piece.addedAt, finishedAt(piece)) - recorded),
    ),
  };
}
