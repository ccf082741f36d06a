import type { Piece } from '../../tracker/bench/index.ts';
import type { Look } from '../line/look.ts';
import { jobCardJson } from '../json/job-card-json.ts';

export function jobCardLines(piece: Piece, look: Look): readonly string[] {
  return jobCardJson(piece, look).record.map(({ at, what }) => `${at} ${what}`);
}
