import type { PieceHours } from '../../tracker/estimate/index.ts';
import type { Cell } from './csv-lines.ts';

const header = [
  'piece',
  'step',
  'step class',
  'state',
  'minutes',
  'estimated',
  'low',
  'high',
  'chance',
  'setup minutes',
  'sessions',
  'verdict',
  'estimate from',
];

/** Actual against estimated minutes, a row for each step of each piece. Where no range was claimed its cells are empty. */
export const hoursRows = (pieces: readonly PieceHours[]): readonly (readonly Cell[])[] => [
  header,
  ...pieces.flatMap(({ piece, steps }) =>
    steps.map(({ step, state, minutes, expected, setup, sessions, verdict }): readonly Cell[] => [
      piece.name,
      step.name,
      step.stepClass,
      state,
      minutes === null ? null : tenths(minutes),
      tenths(expected.minutes),
      ...(expected.chance > 0
        ? [tenths(expected.low), tenths(expected.high), expected.chance]
        : [null, null, null]),
      tenths(setup),
      sessions,
      verdict,
      expected.model,
    ]),
  ),
];

const tenths = (minutes: number): number => Math.round(minutes * 10) / 10;
