import { isFailure, type CommandFile } from './line/command.ts';
import { record } from './line/record.ts';
import { findAnywhere, recallNamed } from './names/find-anywhere.ts';
import { findStep } from './names/find-step.ts';
import { whenGiven, whenOptions } from './read/when.ts';

export const note: CommandFile = {
  takes: '<piece> <text...>',
  options: [['--step <name>', 'the step it is about'], ...whenOptions],
  run: (room, given) => {
    const typed = given.word('piece');
    return record(
      room,
      (look) => {
        const piece = findAnywhere(typed, look.bench, look.shop.zone, 'Not noted');
        if (isFailure(piece)) return piece;
        const typedStep = given.maybe('step');
        const step = typedStep === null ? null : findStep(typedStep, piece, 'Not noted');
        if (isFailure(step)) return step;
        const when = whenGiven(given, 'Not noted', look);
        if (isFailure(when)) return when;
        const text = given.sentence('text');
        return {
          ...when,
          intents: [{ do: 'write note', piece: piece.id, step: step?.id ?? null, text }],
        };
      },
      recallNamed(typed, 'Not noted', room),
    );
  },
};
