import { coatWeights } from '../tracker/bench/index.ts';
import { nearest } from '../tracker/trade/index.ts';
import { stampEvents, type StampEvent } from '../tracker/windows/index.ts';
import { failure, isFailure, type CommandFile } from './line/command.ts';
import { record } from './line/record.ts';
import { stampsToMake } from './stamps-to-make.ts';
import { findStep } from './names/find-step.ts';
import { leavingGiven, putDownOption } from './names/leaving.ts';
import { targetGiven, targetOptions } from './names/target.ts';

/** The keys of the same name. */
const stamping = (act: 'next stamp' | 'first stroke' | 'next section'): CommandFile => ({
  takes: '<piece>',
  options: [putDownOption, ...targetOptions],
  run: (room, given) =>
    record(room, (look) => {
      const target = targetGiven(given, look, 'Not stamped');
      if (isFailure(target)) return target;
      const leaving = leavingGiven(given, look, 'Not stamped');
      if (isFailure(leaving)) return leaving;
      const { piece, part, at } = target;
      return { at, intents: [{ do: act, piece: piece.id, part, ...leaving }] };
    }),
});

export const nextStamp = stamping('next stamp');
export const firstStroke = stamping('first stroke');
export const nextSection = stamping('next section');

export const done: CommandFile = {
  takes: '<piece>',
  options: [
    [`--coat <weight>`, `how heavy the coat went on: ${coatWeights.join(', ')}`],
    ...targetOptions,
  ],
  run: (room, given) =>
    record(room, (look) => {
      const target = targetGiven(given, look, 'Not done');
      if (isFailure(target)) return target;
      const typed = given.maybe('coat');
      const coat = coatWeights.find((each) => each === typed?.trim().toLowerCase());
      if (typed !== null && coat === undefined)
        return failure(
          'usage',
          `Not done: "${typed}" is no weight of a coat: ${coatWeights.join(', ')}.`,
        );
      const { piece, part, at } = target;
      return {
        at,
        intents: [{ do: 'done', piece: piece.id, part, ...(coat === undefined ? {} : { coat }) }],
      };
    }),
};

export const stamp: CommandFile = {
  takes: '<piece> [event]',
  options: [
    ['--agent <letter>', 'what it was, where a step puts on several things: A, B'],
    ['--step <name>', 'the step it belongs to, where it is not the one whose window it changes'],
    ...targetOptions,
  ],
  help: `The event is one of: ${stampEvents.join(', ')}. "stamp PIECE" alone tells those that would change what runs on it.`,
  run: (room, given) => {
    const typed = given.maybe('event');
    if (typed === null) return stampsToMake(room, given);
    const event = eventCalled(typed);
    if (event === null)
      return failure(
        'usage',
        `Not stamped: there is no event "${typed}".`,
        nearest(typed, stampEvents),
      );
    return record(room, (look) => {
      const target = targetGiven(given, look, 'Not stamped');
      if (isFailure(target)) return target;
      const { piece, part, at } = target;
      const agent = given.maybe('agent');
      const named = given.maybe('step');
      const step = named === null ? null : findStep(named, piece, 'Not stamped');
      if (isFailure(step)) return step;
      return {
        at,
        intents: [
          {
            do: 'stamp',
            piece: piece.id,
            part,
            event,
            ...(agent === null ? {} : { agent }),
            ...(step === null ? {} : { step: step.id }),
          },
        ],
      };
    });
  },
};

const eventCalled = (typed: string): StampEvent | null =>
  stampEvents.find((event) => event === typed.trim().toLowerCase().replaceAll(' ', '-')) ?? null;
