import { fitEnd, lineOf, padStart, segment, width, type Line } from '../drawing/index.ts';
import { rangeInTable, rangeInWords, timesIn } from '../format/index.ts';
import type { View } from '../screen.ts';
import type { StepColumns } from './step-row.ts';
import type { OpenedPiece } from './step-window.ts';

/** `so far, beside setup 41, other 7   284   to go 50 to 82 min, 4 times in 5`: the rows' minutes, and what is in none. */
export function totalLine({ hours }: OpenedPiece, columns: StepColumns, view: View): Line {
  const { recorded, setup, other, toGo } = hours;
  const spent = padStart(String(Math.round(recorded - setup.minutes - other)), 5);
  const told = [
    ...(setup.minutes < 0.5 ? [] : [`setup ${Math.round(setup.minutes)}`]),
    ...(other < 0.5 ? [] : [`other ${Math.round(other)}`]),
  ];
  const cells = 5 + columns.name;
  // Of what a narrow terminal has no room for, nothing is better than half a figure.
  const label =
    [
      ...(told.length === 0 ? [] : [`, beside ${told.join(', ')}`]),
      ...told.map((each) => `; ${each}`),
    ]
      .map((beside) => `     so far${beside}`)
      .find((text) => width(text) <= cells) ?? '     so far';
  const head = fitEnd(label, cells) + spent;
  if (toGo === null) return lineOf(head, 'quiet');
  const range =
    columns.window === 0
      ? padStart(rangeInTable(toGo.low, toGo.high), 9)
      : `  to go ${rangeInWords(toGo.low, toGo.high)}, ${timesIn(toGo.chance)}`;
  return [segment(fitEnd(head + range, view.columns, view.theme.glyphs).trimEnd(), 'quiet')];
}
