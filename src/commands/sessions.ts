import { minutesOn, type Session } from '../tracker/bench/index.ts';
import { leftRunning } from '../tracker/estimate/index.ts';
import type { Piece } from '../tracker/bench/index.ts';
import {
  correctable,
  firstWords,
  sessionDay,
  sessionLength,
  sessionSpan,
  sessionWork,
} from '../views/hours/session-words.ts';
import { iso, isoOrNull } from './json/iso.ts';
import { partName, pieceName, stepName } from './json/names.ts';
import type { SessionJson, SessionsJson } from './json-shapes/index.ts';
import { isFailure, type CommandFile } from './line/command.ts';
import type { Look } from './line/look.ts';
import { pieceCalled } from './names/find-piece.ts';
import { lookFor } from './names/look-for.ts';
import { inColumns } from './text/columns.ts';

export const sessions: CommandFile = {
  takes: '<piece>',
  help: 'The last one comes first; correct-session takes its number.',
  run: async (room, given) => {
    const asked = await lookFor(given.word('piece'), 'Not shown', room);
    if (isFailure(asked)) return asked;
    const { piece, shop } = asked;
    const found = correctable(shop.bench, piece.id);
    return {
      lines: () =>
        found.length === 0
          ? [`${pieceCalled(piece)} was never in hand.`]
          : inColumns(
              found.map((session, index) => sessionCells(session, index + 1, piece, shop)),
              new Set([0, 3]),
            ),
      json: (): SessionsJson => ({
        piece: pieceName(piece),
        sessions: found.map((session, index) => sessionJson(session, index + 1, piece, shop)),
      }),
    };
  },
};

const sessionCells = (
  session: Session,
  place: number,
  piece: Piece,
  { now, shop }: Look,
): readonly string[] => [
  String(place),
  sessionDay(session, shop),
  sessionSpan(session, shop),
  sessionLength(session, now),
  sessionWork(session, piece),
  firstWords(session, shop),
];

function sessionJson(session: Session, place: number, piece: Piece, look: Look): SessionJson {
  const { bench, now, shop } = look;
  const { zone } = shop;
  const { first } = session;
  return {
    place,
    id: session.id,
    targets: session.targets.flatMap((target) => {
      const its = bench.pieces.get(target.piece);
      return its === undefined
        ? []
        : [
            {
              piece: pieceName(its),
              part: partName(its, target.part),
              step: stepName(its, target.step),
            },
          ];
    }),
    start: iso(session.start, zone),
    end: isoOrNull(session.end, zone),
    minutes: minutesOn(session, piece, bench, now),
    first:
      first === null ? null : { start: iso(first.start, zone), end: isoOrNull(first.end, zone) },
    dropped: session.dropped,
    trimTo: isoOrNull(leftRunning(bench, piece, session, now)?.trimTo ?? null, zone),
  };
}
