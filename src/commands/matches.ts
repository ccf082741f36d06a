import { isFailure, type CommandFile } from './line/command.ts';
import { record } from './line/record.ts';
import { findOnBench } from './names/find-piece.ts';

export const matches: CommandFile = {
  takes: '<piece> <partner>',
  help: 'The same again undoes it. What differs so far is shown by job-card and steps.',
  run: (room, given) =>
    record(room, (look) => {
      const piece = findOnBench(given.word('piece'), look.bench, 'Not matched');
      if (isFailure(piece)) return piece;
      const partner = findOnBench(given.word('partner'), look.bench, 'Not matched');
      if (isFailure(partner)) return partner;
      return { intents: [{ do: 'match pieces', piece: piece.id, partner: partner.id }] };
    }),
};
