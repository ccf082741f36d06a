import { failure, isFailure, type CommandFile } from './line/command.ts';
import { record } from './line/record.ts';
import { findOnBench } from './names/find-piece.ts';

export const parts: CommandFile = {
  takes: '<piece> [names...]',
  options: [['--none', 'worked as one again']],
  help: 'The names of all parts, in order: parts 3 case drawers "left door", or with commas: parts 3 case, left door. A part keeps its record by its name.',
  run: (room, given) => {
    const names = namesIn(given.list('names'));
    if (given.has('none') !== (names.length === 0))
      return failure('usage', 'Not noted: give the names of all parts, or --none.');
    return record(room, ({ bench }) => {
      const piece = findOnBench(given.word('piece'), bench, 'Not noted');
      return isFailure(piece) ? piece : { intents: [{ do: 'name parts', piece: piece.id, names }] };
    });
  },
};

/** Names with commas between them, as they are written on the screen, are told apart by these alone. */
function namesIn(words: readonly string[]): readonly string[] {
  if (!words.some((word) => word.includes(','))) return words;
  const names = words.join(' ').split(',');
  return names.map((name) => name.trim()).filter((name) => name !== '');
}
