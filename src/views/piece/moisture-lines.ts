import { moistureFindings, type Piece } from '../../tracker/bench/index.ts';
import type { Line } from '../drawing/index.ts';
import { latestAir, moistureWords } from '../format/index.ts';
import type { View } from '../screen.ts';
import { labelled } from './window-block.ts';

/** What the meter says of the wood, beside the window that waits for it to dry. */
export function moistureLines(piece: Piece, { now, columns, snapshot }: View): readonly Line[] {
  const { readings, shop } = snapshot;
  return moistureFindings(piece, latestAir(readings)).flatMap((finding) => {
    const part = piece.parts.find(({ id }) => id === finding.part)?.name ?? null;
    const [first = '', ...more] = moistureWords(finding, part, now, shop);
    return [
      ...labelled('moisture', first, columns),
      ...more.flatMap((words) => labelled('', words, columns)),
    ];
  });
}
