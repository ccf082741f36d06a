import { isFailure, type CommandFile } from './line/command.ts';
import { record } from './line/record.ts';
import { findOnBench } from './names/find-piece.ts';
import { foreseen } from './read/foreseen.ts';
import { descriptionGiven, descriptionOptions } from './read/description.ts';

export const describe: CommandFile = {
  takes: '<piece>',
  options: [['--name <words>', 'another name'], ...descriptionOptions],
  help: 'The word none takes something away: --promised none.',
  run: (room, given) =>
    record(room, (look) => {
      const piece = findOnBench(given.word('piece'), look.bench, 'Not noted');
      if (isFailure(piece)) return piece;
      const description = descriptionGiven(given, look, 'Not noted');
      if (isFailure(description)) return description;
      const name = given.maybe('name');
      const changes = name === null ? description : { ...description, name };
      return { intents: [{ do: 'describe piece', piece: piece.id, changes }], foresees: foreseen };
    }),
};
