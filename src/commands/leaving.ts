import { failure, isFailure, type CommandFile } from './line/command.ts';
import { lookBack } from './line/look-back.ts';
import { record } from './line/record.ts';
import { findAnywhere, recallNamed } from './names/find-anywhere.ts';
import { findOnBench, pieceCalled } from './names/find-piece.ts';
import { whenGiven, whenOptions } from './read/when.ts';

export const offBench: CommandFile = {
  takes: '<piece>',
  options: whenOptions,
  help: 'What is in hand is put down. "past" lists it from then on; "put-back" brings it back.',
  run: (room, given) =>
    record(room, (look) => {
      const piece = findOnBench(given.word('piece'), look.bench, 'Not taken off');
      if (isFailure(piece)) return piece;
      const when = whenGiven(given, 'Not taken off', look);
      if (isFailure(when)) return when;
      return { ...when, intents: [{ do: 'take off bench', piece: piece.id }] };
    }),
};

export const putBack: CommandFile = {
  takes: '<piece>',
  help: 'Of several past pieces with one name, name the day on which it left: put-back "Oak chest 2026-05-12".',
  run: (room, given) => {
    const typed = given.word('piece');
    return record(
      room,
      ({ bench, shop }) => {
        const piece = findAnywhere(typed, bench, shop.zone, 'Not put back');
        if (isFailure(piece)) return piece;
        return { intents: [{ do: 'put back on bench', piece: piece.id }] };
      },
      recallNamed(typed, 'Not put back', room),
    );
  },
};

export const remove: CommandFile = {
  takes: '<piece>',
  options: [['--yes', 'without being asked']],
  help: 'It is left out of learning too. Everything that was told of it stays in the file.',
  run: async (room, given) => {
    const typed = given.word('piece');
    if (!given.has('yes')) {
      if (room.ask === null)
        return failure('refused', 'Not removed: nobody is here to be asked. Give --yes.');
      const all = await lookBack(room);
      if (isFailure(all)) return all;
      const piece = findAnywhere(typed, all.bench, all.shop.zone, 'Not removed');
      if (isFailure(piece)) return piece;
      const question = `Remove ${pieceCalled(piece)}? Hidden, left out of learning; the record stays.`;
      if (!(await room.ask(question))) return failure('refused', 'Not removed: you said no.');
    }
    return record(
      room,
      ({ bench, shop }) => {
        const piece = findAnywhere(typed, bench, shop.zone, 'Not removed');
        return isFailure(piece) ? piece : { intents: [{ do: 'remove piece', piece: piece.id }] };
      },
      recallNamed(typed, 'Not removed', room),
    );
  },
};
