import { pieceMinutes } from '../tracker/bench/index.ts';
import { nearest } from '../tracker/trade/index.ts';
import { minute } from '../tracker/time/index.ts';
import { fullDay, minutesSpent, shopDay } from '../views/format/index.ts';
import { iso, isoOrNull } from './json/iso.ts';
import { pieceName } from './json/names.ts';
import type { PastJson } from './json-shapes/index.ts';
import { failure, isFailure, type CommandFile } from './line/command.ts';
import { lookBack } from './line/look-back.ts';
import { pastPieces } from './names/find-anywhere.ts';
import { inColumns } from './text/columns.ts';

export const past: CommandFile = {
  options: [['--find <words>', 'only those with these words in name, kind, schedule or a note']],
  help: 'The last to leave comes first.',
  run: async (room, given) => {
    const all = await lookBack(room);
    if (isFailure(all)) return all;
    const { bench, now } = all;
    const { zone } = all.shop;
    const every = pastPieces(bench);
    const find = given.maybe('find');
    const found = every.filter((piece) => find === null || isAbout(piece, find));
    if (find !== null && found.length === 0)
      return failure(
        'unknown',
        `Not found: no past piece has "${find}" in it.`,
        nearest(find, new Set(every.map(({ name }) => name))),
      );
    const pieces = found.map((piece) => ({ piece, minutes: pieceMinutes(bench, piece, now) }));
    return {
      lines: () =>
        pieces.length === 0
          ? ['No piece has left the bench yet.']
          : inColumns(
              pieces.map(({ piece, minutes }) => [
                fullDay(shopDay(piece.leftAt ?? piece.addedAt, zone)),
                piece.name,
                piece.schedule.name,
                minutesSpent(minutes * minute),
              ]),
            ),
      json: (): PastJson => ({
        pieces: pieces.map(({ piece, minutes }) => ({
          ...pieceName(piece),
          schedule: piece.schedule.id,
          added: iso(piece.addedAt, zone),
          left: isoOrNull(piece.leftAt, zone),
          minutes,
        })),
      }),
    };
  },
};

type Sought = ReturnType<typeof pastPieces>[number];

function isAbout({ name, kind, schedule, notes }: Sought, words: string): boolean {
  const text = [name, kind ?? '', schedule.name, ...notes.map((each) => each.text)]
    .join('\n')
    .toLowerCase();
  return words
    .toLowerCase()
    .split(/\s+/)
    .every((word) => text.includes(word));
}
