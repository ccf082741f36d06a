import { lateCauses } from '../tracker/trade/index.ts';
import { isFailure, type CommandFile } from './line/command.ts';
import { record } from './line/record.ts';
import { findOnBench } from './names/find-piece.ts';
import { match } from './names/match.ts';

export const whyLate: CommandFile = {
  takes: '<piece> <cause...>',
  help: `It is about the last "not yet" of the piece. The cause is one of: ${lateCauses.join(', ')}.`,
  run: (room, given) =>
    record(room, (look) => {
      const piece = findOnBench(given.word('piece'), look.bench, 'Not noted');
      if (isFailure(piece)) return piece;
      const cause = match(
        given.sentence('cause'),
        lateCauses.map((each) => ({ thing: each, called: each, names: [each], name: each })),
        { not: 'Not noted', what: 'cause' },
      );
      if (isFailure(cause)) return cause;
      return { intents: [{ do: 'explain lateness', piece: piece.id, cause: cause.found }] };
    }),
};
