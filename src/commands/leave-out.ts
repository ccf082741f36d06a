import { correctable } from '../views/hours/session-words.ts';
import { failure, isFailure, type CommandFile } from './line/command.ts';
import { record } from './line/record.ts';
import { findAnywhere, recallNamed } from './names/find-anywhere.ts';
import { pieceCalled } from './names/find-piece.ts';

const not = 'Not left out';

export const leaveOut: CommandFile = {
  takes: '<piece>',
  options: [
    [
      '--session <number>',
      'only the steps worked in that session, numbered as "sessions PIECE" does',
    ],
    ['--again', 'let it teach again'],
  ],
  help: 'Its minutes stay on record and are shown, but nothing is expected of other pieces because of them.',
  run: (room, given) => {
    const typed = given.word('piece');
    return record(
      room,
      ({ bench, shop }) => {
        const piece = findAnywhere(typed, bench, shop.zone, not);
        if (isFailure(piece)) return piece;
        const number = given.maybe('session');
        const all = correctable(bench, piece.id);
        const session = all.find(({ id }, index) => String(index + 1) === number || id === number);
        if (number !== null && session === undefined)
          return failure(
            'unknown',
            `${not}: ${pieceCalled(piece)} has no session "${number}"; it has ${all.length}.`,
          );
        return {
          intents: [
            {
              do: 'leave out of learning',
              piece: piece.id,
              session: session?.id ?? null,
              leave: !given.has('again'),
            },
          ],
        };
      },
      recallNamed(typed, not, room),
    );
  },
};
