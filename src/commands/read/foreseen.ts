import { outlookAround, pieceOutlook } from '../../tracker/estimate/index.ts';
import { outlookJson } from '../json/outlook-json.ts';
import type { Look } from '../line/look.ts';
import type { Foreseen } from '../line/record.ts';
import { outlookLines } from '../text/outlook-lines.ts';

/** What a piece will take, as the shop stands; null once anything was done to it. */
export function foreseen(look: Look, id: string): Foreseen | null {
  const { bench, settings, sense, now } = look;
  const piece = bench.pieces.get(id);
  if (piece === undefined) return null;
  const outlook = pieceOutlook(bench, piece, outlookAround(settings, sense, now));
  if (outlook === null) return null;
  return { lines: () => outlookLines(outlook, look), json: () => outlookJson(outlook) };
}
