import { readDuration } from '../tracker/time/index.ts';
import { failure, isFailure, type CommandFile } from './line/command.ts';
import { record } from './line/record.ts';
import { findOnBench } from './names/find-piece.ts';
import { findNamed } from './names/match.ts';
import { whenGiven, whenOptions } from './read/when.ts';

export const timer: CommandFile = {
  takes: '<label> <length...>',
  options: [['--piece <piece>', 'the piece it is for'], ...whenOptions],
  help: 'The length: 35, 35 min, 1:20, 2 h, 3 d.',
  run: (room, given) => {
    const length = readDuration(given.sentence('length'));
    if (!length.ok) return failure('usage', `Not started: ${length.says}`);
    return record(room, (look) => {
      const typed = given.maybe('piece');
      const piece = typed === null ? null : findOnBench(typed, look.bench, 'Not started');
      if (isFailure(piece)) return piece;
      const when = whenGiven(given, 'Not started', look);
      if (isFailure(when)) return when;
      return {
        ...when,
        intents: [
          {
            do: 'start timer',
            label: given.word('label'),
            ms: length.ms,
            piece: piece?.id ?? null,
          },
        ],
      };
    });
  },
};

export const closeTimer: CommandFile = {
  takes: '<label>',
  options: whenOptions,
  run: (room, given) =>
    record(room, (look) => {
      const open = look.bench.timers.filter(({ closedAt }) => closedAt === null);
      const found = findNamed(
        given.word('label'),
        open.map((each) => ({
          thing: each,
          called: each.label,
          names: [each.label, each.id],
          name: each.label,
        })),
        { not: 'Not closed', what: 'timer' },
      );
      if (isFailure(found)) return found;
      const when = whenGiven(given, 'Not closed', look);
      if (isFailure(when)) return when;
      return { ...when, intents: [{ do: 'close timer', timer: found.id }] };
    }),
};
