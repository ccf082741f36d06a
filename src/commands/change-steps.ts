import type { Intent, Piece, PlannedStep } from '../tracker/bench/index.ts';
import { isFailure, type CommandFile, type Failure, type Given } from './line/command.ts';
import { record } from './line/record.ts';
import { findOnBench } from './names/find-piece.ts';
import { findStep } from './names/find-step.ts';

type Change = (
  found: { readonly piece: Piece; readonly step: PlannedStep },
  given: Given,
) => Intent | Failure;

/** Changes the steps of one piece; the finishing schedule stays as it is. */
const changing = (
  not: string,
  takes: string,
  options: NonNullable<CommandFile['options']>,
  toIntent: Change,
): CommandFile => ({
  takes: `<piece> <step>${takes}`,
  options,
  help: 'A STEP is its name, the beginning of it, or its place in the list that "steps" shows.',
  run: (room, given) =>
    record(room, ({ bench }) => {
      const piece = findOnBench(given.word('piece'), bench, not);
      if (isFailure(piece)) return piece;
      const step = findStep(given.word('step'), piece, not);
      if (isFailure(step)) return step;
      const intent = toIntent({ piece, step }, given);
      return isFailure(intent) ? intent : { intents: [intent] };
    }),
});

export const repeatStep = changing('Not repeated', '', [], ({ piece, step }) => ({
  do: 'repeat step',
  piece: piece.id,
  step: step.id,
}));

export const moveStep = changing(
  'Not moved',
  '',
  [['--before <step>', 'the step before which it is to come; without it, at the end']],
  ({ piece, step }, given) => {
    const typed = given.maybe('before');
    const before = typed === null ? null : findStep(typed, piece, 'Not moved');
    if (isFailure(before)) return before;
    return { do: 'move step', piece: piece.id, step: step.id, before: before?.id ?? null };
  },
);

export const skipStep = changing(
  'Not skipped',
  '',
  [['--undo', 'put it back into the list']],
  ({ piece, step }, given) => ({
    do: 'skip step',
    piece: piece.id,
    step: step.id,
    skipped: !given.has('undo'),
  }),
);

export const rewordStep = changing('Not reworded', ' <words...>', [], ({ piece, step }, given) => ({
  do: 'reword step',
  piece: piece.id,
  step: step.id,
  name: given.sentence('words'),
}));
