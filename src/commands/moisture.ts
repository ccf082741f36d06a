import { readMoisture, type MoistureRead } from '../tracker/trade/index.ts';
import { failure, isFailure, type CommandFile } from './line/command.ts';
import { record } from './line/record.ts';
import { findStep } from './names/find-step.ts';
import { targetGiven, targetOptions } from './names/target.ts';

export const moisture: CommandFile = {
  takes: '<piece> [percent...]',
  options: [
    ['--untouched <percent>', 'what it shows on a spot of the piece that was left alone'],
    ['--step <name>', 'the step it is about'],
    ...targetOptions,
  ],
  help: 'Dry enough to coat is within one point of an untouched spot; without one, of what the air of the shop gives. job-card and steps show what it comes to.',
  run: (room, given) =>
    record(room, (look) => {
      const target = targetGiven(given, look, 'Not noted');
      if (isFailure(target)) return target;
      const { piece, part, at } = target;
      const typedStep = given.maybe('step');
      const step = typedStep === null ? null : findStep(typedStep, piece, 'Not noted');
      if (isFailure(step)) return step;
      const read = readingGiven(given.sentence('percent'), given.maybe('untouched'));
      if (isFailure(read)) return read;
      return {
        at,
        intents: [{ do: 'read moisture', piece: piece.id, part, step: step?.id ?? null, ...read }],
      };
    }),
};

/** The words behind the piece, and the option, which stands for `untouched` in them. */
function readingGiven(typed: string, untouched: string | null) {
  const read = readMoisture(
    [typed, ...(untouched === null ? [] : [`untouched ${untouched}`])].join(' '),
  );
  return read.ok ? (read.read satisfies MoistureRead) : failure('usage', `Not noted: ${read.says}`);
}
