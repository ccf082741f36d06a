import { readDuration } from '../tracker/time/index.ts';
import { failure, isFailure, type CommandFile } from './line/command.ts';
import { record } from './line/record.ts';
import { findOnBench } from './names/find-piece.ts';

/** Moves the last stamp of a piece; by how much can be left to what it is. */
const moving = (isEarlier: boolean): CommandFile => ({
  takes: '<piece> [by...]',
  help: 'By 5 minutes for a coat and by 1 for anything else, or by the length that is given: 12 min. Never past what came before or after it, nor past now.',
  run: (room, given) => {
    const typed = given.sentence('by');
    const by = typed === '' ? null : readDuration(typed);
    if (by?.ok === false) return failure('usage', `Not moved: ${by.says}`);
    return record(room, ({ bench }) => {
      const piece = findOnBench(given.word('piece'), bench, 'Not moved');
      if (isFailure(piece)) return piece;
      const length = by === null ? {} : { ms: by.ms };
      return {
        intents: [{ do: 'move stamp', piece: piece.id, earlier: isEarlier, ...length }],
      };
    });
  },
});

export const earlier = moving(true);
export const later = moving(false);
