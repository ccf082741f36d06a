import { dwellTarget } from '../../tracker/bench/index.ts';
import type { Line } from '../drawing/index.ts';
import { dwellTargetWords } from '../format/index.ts';
import { labelled } from '../piece/window-block.ts';
import type { View } from '../screen.ts';
import type { BenchRows } from './bench-rows.ts';

/** While a dwell runs on the selected piece and a row is spare: how long its partner's was. */
export function matchRows({ selected }: BenchRows, view: View, room: number): readonly Line[] {
  const { piece = null, windows = [] } = selected ?? {};
  if (piece === null || piece.partners.length === 0 || room < 1) return [];
  const { bench, sense } = view.snapshot;
  for (const window of windows) {
    const target = dwellTarget(bench, piece, window, view.now, sense);
    if (target !== null)
      return labelled('dwell', dwellTargetWords(target), view.columns, 'strong').slice(0, room);
  }
  return [];
}
