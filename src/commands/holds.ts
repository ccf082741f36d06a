import { readDay } from '../tracker/time/index.ts';
import { shopDay } from '../views/format/zone.ts';
import { failure, isFailure, type CommandFile } from './line/command.ts';
import { record } from './line/record.ts';
import { findOnBench } from './names/find-piece.ts';
import { whenGiven, whenOptions } from './read/when.ts';

export const hold: CommandFile = {
  takes: '<piece> <reason...>',
  options: [['--ask <day>', 'ask again on that day: Sat, 28 Nov, in 3 days']],
  help: 'A hold stops no window and silences no ping.',
  run: (room, given) =>
    record(room, ({ bench, now, shop }) => {
      const piece = findOnBench(given.word('piece'), bench, 'Not on hold');
      if (isFailure(piece)) return piece;
      const typed = given.maybe('ask');
      const day = typed === null ? null : readDay(typed, shopDay(now, shop.zone));
      if (day?.ok === false) return failure('usage', `Not on hold: ${day.says}`);
      return {
        intents: [
          {
            do: 'place hold',
            piece: piece.id,
            reason: given.sentence('reason'),
            askAgain: day?.day ?? null,
          },
        ],
      };
    }),
};

export const carriedIn: CommandFile = {
  takes: '<piece>',
  options: whenOptions,
  help: 'From somewhere colder: for some hours a coat is warned of, until a surface reading says otherwise (conditions "66F 55% surface 60F").',
  run: (room, given) =>
    record(room, (look) => {
      const piece = findOnBench(given.word('piece'), look.bench, 'Not noted');
      if (isFailure(piece)) return piece;
      const when = whenGiven(given, 'Not noted', look);
      if (isFailure(when)) return when;
      return { ...when, intents: [{ do: 'carry in', piece: piece.id }] };
    }),
};

export const lift: CommandFile = {
  takes: '<piece>',
  run: (room, given) =>
    record(room, ({ bench }) => {
      const piece = findOnBench(given.word('piece'), bench, 'Not lifted');
      return isFailure(piece) ? piece : { intents: [{ do: 'lift hold', piece: piece.id }] };
    }),
};
