import type { Piece } from '../../tracker/bench/index.ts';
import { isFailure, type Failure } from '../line/command.ts';
import { lookAt, openToRead, type Look } from '../line/look.ts';
import { withYears } from '../line/look-back.ts';
import type { Room } from '../line/room.ts';
import { findAnywhere } from './find-anywhere.ts';
import { findOnBench } from './find-piece.ts';

/** A piece wherever it is, and the shop with its record. The years gone by are read only where it isn't on the bench. */
export async function lookFor(
  typed: string,
  not: string,
  room: Room,
): Promise<{ readonly piece: Piece; readonly shop: Look } | Failure> {
  const opened = await openToRead(room);
  if (isFailure(opened)) return opened;
  const bench = lookAt(room, opened);
  const here = findOnBench(typed, bench.bench, not);
  if (!isFailure(here)) return { piece: here, shop: bench };
  const shop = await withYears(opened, room);
  const piece = findAnywhere(typed, shop.bench, shop.shop.zone, not);
  return isFailure(piece) ? piece : { piece, shop };
}
