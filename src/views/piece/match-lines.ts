import { dwellTarget, matchFindings } from '../../tracker/bench/index.ts';
import type { Window } from '../../tracker/windows/index.ts';
import { labelled } from './window-block.ts';
import type { Line } from '../drawing/index.ts';
import { dwellTargetWords, matchWords, timeLeftOf } from '../format/index.ts';
import type { View } from '../screen.ts';
import type { OpenedPiece } from './step-window.ts';

/** What a piece should match and in what they differ; while a dwell runs, first the partner's. */
export function matchLines(
  { bench, piece }: OpenedPiece,
  window: Window | null,
  view: View,
): readonly Line[] {
  const { now, columns, snapshot } = view;
  const target = window === null ? null : dwellTarget(bench, piece, window, now, snapshot.sense);
  const left =
    target === null || target.at <= now ? '' : `; ${timeLeftOf(target.at - now)} from now`;
  return [
    ...(target === null
      ? []
      : labelled('dwell', dwellTargetWords(target) + left, columns, 'strong')),
    ...matchFindings(bench, piece, snapshot.sense).flatMap((finding) =>
      labelled('matches', matchWords(finding), columns),
    ),
  ];
}
