import {
  factsOfPiece,
  foldBench,
  piecesOnBench,
  type Bench,
  type Piece,
} from '../../tracker/bench/index.ts';
import { readHistories } from '../../shell/recall.ts';
import { shopDay, type Zone } from '../../views/format/zone.ts';
import { isFailure, type Failure } from '../line/command.ts';
import { lookAt } from '../line/look.ts';
import { together } from '../line/look-back.ts';
import type { Recall } from '../line/record.ts';
import type { Room } from '../line/room.ts';
import { namedPiece } from './find-piece.ts';
import { findNamed, match, type Named } from './match.ts';

/** Pieces that have left the bench and were not removed, the last to leave first. */
export const pastPieces = (bench: Bench): readonly Piece[] =>
  [...bench.pieces.values()]
    .filter(({ place }) => place === 'past')
    .sort((a, b) => (b.leftAt ?? 0) - (a.leftAt ?? 0));

/** A past piece by its name, or where several had it, with the day on which it left: `Oak chest 2026-05-12`. */
function namedPast(piece: Piece, zone: Zone): Named<Piece> {
  const dated = `${piece.name} ${shopDay(piece.leftAt ?? piece.addedAt, zone)}`;
  return { thing: piece, called: dated, names: [piece.name, dated, piece.id], name: piece.name };
}

/** Finds a piece on the bench, else one that has left it. */
export function findAnywhere(
  typed: string,
  bench: Bench,
  zone: Zone,
  not: string,
): Piece | Failure {
  const here = piecesOnBench(bench).map(namedPiece);
  const gone = pastPieces(bench).map((piece) => namedPast(piece, zone));
  const sought = { not, what: 'piece' };
  for (const things of [here, gone]) {
    const found = match(typed, things, sought);
    if (!isFailure(found)) return found.found;
    if (found.several) return found;
  }
  return findNamed(typed, [...here, ...gone], sought);
}

/** Fetches a piece's facts out of the years gone by, where the bench file no longer has it. */
export const recallNamed =
  (typed: string, not: string, room: Room): Recall =>
  (store) => {
    const loaded = store.load();
    // What can't be loaded can't be changed either; that is told then.
    if (!loaded.ok) return [];
    const { bench, shop } = lookAt(room, loaded.value);
    if (!isFailure(findAnywhere(typed, bench, shop.zone, not))) return [];
    const { facts, problems } = readHistories(store);
    problems.forEach(room.tell);
    const all = foldBench(together(facts, loaded.value.bench));
    const piece = findAnywhere(typed, all, shop.zone, not);
    return isFailure(piece) ? piece : factsOfPiece(facts, piece.id).facts;
  };
