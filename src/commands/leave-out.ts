import type { Intent } from '../tracker/bench/index.ts';
import { correctable } from '../views/hours/session-words.ts';
import { failure, isFailure, type CommandFile, type Failure, type Given } from './line/command.ts';
import type { Look } from './line/look.ts';
import { record } from './line/record.ts';
import { answerWhatIf, whatIfOption } from './line/what-if.ts';
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
    whatIfOption,
  ],
  help: 'Its minutes stay on record and are shown, but nothing is expected of other pieces because of them.',
  run: (room, given) => {
    if (given.has('what-if')) return answerWhatIf(room, (look) => leaving(given, look));
    return record(
      room,
      (look) => {
        const intent = leaving(given, look);
        return isFailure(intent) ? intent : { intents: [intent] };
      },
      recallNamed(given.word('piece'), not, room),
    );
  },
};

function leaving(
  given: Given,
  { bench, shop }: Look,
): Extract<Intent, { do: 'leave out of learning' }> | Failure {
  const piece = findAnywhere(given.word('piece'), bench, shop.zone, not);
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
    do: 'leave out of learning',
    piece: piece.id,
    session: session?.id ?? null,
    leave: !given.has('again'),
  };
}
