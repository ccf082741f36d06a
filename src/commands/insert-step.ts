import { currentStep } from '../tracker/bench/index.ts';
import { minute, readDuration } from '../tracker/time/index.ts';
import { nearest, stepClasses, type Step } from '../tracker/trade/index.ts';
import { improvise } from '../views/piece/improvise.ts';
import { failure, isFailure, type CommandFile } from './line/command.ts';
import { record } from './line/record.ts';
import { findOnBench } from './names/find-piece.ts';
import { findStep } from './names/find-step.ts';

const not = 'Not inserted';

export const insertStep: CommandFile = {
  takes: '<piece> <words...>',
  options: [
    ['--class <name>', 'what kind of work it is, so that hours can be compared; else "other"'],
    ['--minutes <length>', 'how long it takes; else as such work on this piece, or as usual'],
    ['--before <step>', 'the step before which it comes; else the one that is next'],
    ['--last', 'at the end'],
  ],
  help: `Classes: ${stepClasses.join('; ')}.`,
  run: (room, given) => {
    const typedClass = given.maybe('class') ?? 'other';
    const stepClass = stepClasses.find(
      (each) => each.toLowerCase() === typedClass.trim().toLowerCase(),
    );
    if (stepClass === undefined)
      return failure(
        'usage',
        `${not}: there is no class of work "${typedClass}".`,
        nearest(typedClass, stepClasses),
      );
    const typedLength = given.maybe('minutes');
    const length = typedLength === null ? null : readDuration(typedLength);
    if (length?.ok === false) return failure('usage', `${not}: ${length.says}`);
    const typedBefore = given.maybe('before');
    if (typedBefore !== null && given.has('last'))
      return failure('usage', `${not}: give --before or --last, not both.`);
    return record(room, ({ bench }) => {
      const piece = findOnBench(given.word('piece'), bench, not);
      if (isFailure(piece)) return piece;
      const named = typedBefore === null ? null : findStep(typedBefore, piece, not);
      if (isFailure(named)) return named;
      const before = given.has('last') ? null : (named ?? currentStep(piece, null));
      const { step } = improvise(piece, given.sentence('words'), stepClass, before?.id ?? null);
      return {
        intents: [
          {
            do: 'insert step',
            piece: piece.id,
            step: length === null ? step : { ...step, minutes: around(length.ms / minute, step) },
            before: before?.id ?? null,
          },
        ],
      };
    });
  },
};

/** The minutes that were given, with a range as wide in proportion as such work has. */
function around(typical: number, { minutes }: Pick<Step, 'minutes'>): Step['minutes'] {
  const scale = typical / minutes.typical;
  return { typical, low: minutes.low * scale, high: minutes.high * scale };
}
