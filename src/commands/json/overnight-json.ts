import { openPots, potCalled, spoilsRunning, type Piece } from '../../tracker/bench/index.ts';
import { beforeYouGo, duesTill, questionsFor } from '../../tracker/overnight/index.ts';
import type { Instant } from '../../tracker/time/index.ts';
import type { OvernightJson, PieceNameJson } from '../json-shapes/index.ts';
import type { Look } from '../line/look.ts';
import { iso } from './iso.ts';
import { pieceName } from './names.ts';
import { potJson } from './pot-json.ts';

/** What falls due until `backAt`, what can spoil, what is worth doing before, and what to see to. */
export function overnightJson({ bench, now, sense, shop }: Look, backAt: Instant): OvernightJson {
  const { zone } = shop;
  const nameOf = (piece: Piece | null | undefined): PieceNameJson | null =>
    piece ? pieceName(piece) : null;
  return {
    at: iso(now, zone),
    backAt: iso(backAt, zone),
    fallsDue: duesTill(bench, now, backAt, sense).map(
      ({ piece, timer, pot, window, at, ends, begins, loss }) => ({
        piece: nameOf(piece),
        timer: timer?.label ?? null,
        pot: pot === null ? null : potCalled(pot),
        verb: window.rule.verb,
        at: iso(at, zone),
        ends: ends.meaning,
        begins: begins.meaning,
        loss,
        says: begins.says ?? null,
      }),
    ),
    spoils: spoilsRunning(bench, now, sense).map(({ rule, subject }) => ({
      piece: nameOf(bench.pieces.get(subject.pieceId)),
      verb: rule.verb,
    })),
    beforeYouGo: beforeYouGo(bench, now, backAt, sense).map(
      ({ piece, step, window, by, saves }) => ({
        piece: pieceName(piece),
        step: step?.name ?? null,
        verb: window.rule.verb,
        by: iso(by, zone),
        saves: saves.says ?? null,
      }),
    ),
    openPots: openPots(bench).map((pot) => potJson(pot, zone)),
    questions: questionsFor(bench, now, sense),
  };
}
