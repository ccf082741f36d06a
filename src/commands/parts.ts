import { failure, isFailure, type CommandFile } from './line/command.ts';
import { record } from './line/record.ts';
import { findOnBench } from './names/find-piece.ts';

export const parts: CommandFile = {
  takes: '<piece> [names...]',
  options: [['--none', 'worked as one again']],
  help: 'The names of all parts, in order: parts 3 case drawers "left door". A part keeps its record by its name.',
  run: (room, given) => {
    const names = given.list('names');
    if (given.has('none') !== (names.length === 0))
      return failure('usage', 'Not noted: give the names of all parts, or --none.');
    return record(room, ({ bench }) => {
      const piece = findOnBench(given.word('piece'), bench, 'Not noted');
      return isFailure(piece) ? piece : { intents: [{ do: 'name parts', piece: piece.id, names }] };
    });
  },
};
