import { dwellTarget } from '../../tracker/bench/index.ts';
import type { Line } from '../drawing/index.ts';
import { clock, dwellTargetWords } from '../format/index.ts';
import { labelled } from '../piece/window-block.ts';
import type { View } from '../screen.ts';
import type { BenchRows } from './bench-rows.ts';

/** While a dwell runs on the selected piece and a row is spare: how long its partner's was, and when that is. */
export function matchRows({ selected }: BenchRows, view: View, room: number): readonly Line[] {
  const { piece = null, windows = [] } = selected ?? {};
  if (piece === null || piece.partners.length === 0 || room < 1) return [];
  const { bench, sense } = view.snapshot;
  for (const window of windows) {
    const target = dwellTarget(bench, piece, window, view.now, sense);
    if (target === null) continue;
    // A clock time stays as it is, where a count-down would want the row drawn anew; beyond the label's none is named.
    const when = `, ${target.at > view.now ? 'at' : 'since'} ${clock(target.at, view.snapshot.shop)}`;
    const told = dwellTargetWords(target) + (target.pastLabel ? '' : when);
    return labelled('dwell', told, view.columns, 'strong').slice(0, room);
  }
  return [];
}
