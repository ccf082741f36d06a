import { lineOf, type Line } from './line.ts';

/** What ranges are drawn on: from its first cell to its last, in equal steps or in equal ratios. */
export type RangeAxis = {
  readonly from: number;
  readonly to: number;
  readonly scale: 'linear' | 'ratio';
  readonly ticks: readonly { readonly at: number; readonly label: string }[];
};

const minuteSteps = [5, 10, 15, 30, 60, 120, 240, 480] as const;
const ticksWanted = 5;

/** Minutes from 0 to at least `longest`, with about five round ticks. */
export function minutesAxis(longest: number): RangeAxis {
  const step =
    minuteSteps.find((candidate) => candidate * (ticksWanted - 1) >= longest) ??
    Math.ceil(longest / (ticksWanted - 1) / 480) * 480;
  const steps = Math.max(1, Math.ceil(longest / step));
  return {
    from: 0,
    to: steps * step,
    scale: 'linear',
    ticks: Array.from({ length: steps + 1 }, (_, index) => ({
      at: index * step,
      label: String(index * step),
    })),
  };
}

/** How many times what the schedule says: from half to double, the same way to both sides. */
export const ratioAxis: RangeAxis = {
  from: 0.5,
  to: 2,
  scale: 'ratio',
  ticks: [
    { at: 0.5, label: 'half' },
    { at: 1, label: 'as said' },
    { at: 2, label: 'double' },
  ],
};

/** The cell for a value; below 0 or from `width` on it lies off the axis. */
export function cellOnAxis(value: number, axis: RangeAxis, width: number): number {
  const place = axis.scale === 'ratio' ? Math.log : (each: number) => each;
  return roundHalfEven(
    ((place(value) - place(axis.from)) / (place(axis.to) - place(axis.from))) * (width - 1),
  );
}

/** The labels above the pictures, each beginning at its tick, the last one ending at the edge; what would touch is left out. */
export function rangeAxisLine(axis: RangeAxis, width: number): Line {
  const cells = Array.from({ length: Math.max(0, width) }, () => ' ');
  const ends = [axis.ticks[0], axis.ticks.at(-1), ...axis.ticks.slice(1, -1)];
  for (const tick of ends) {
    if (tick === undefined) continue;
    const at = Math.min(cellOnAxis(tick.at, axis, width), width - tick.label.length);
    if (at < 0) continue;
    const around = cells.slice(Math.max(0, at - 1), at + tick.label.length + 1);
    if (around.every((cell) => cell === ' ')) cells.splice(at, tick.label.length, ...tick.label);
  }
  return lineOf(cells.join(''), 'quiet');
}

/** Halves go to the even side, so that they don't all lean to the right. */
function roundHalfEven(value: number): number {
  const rounded = Math.round(value);
  return rounded - value === 0.5 && rounded % 2 !== 0 ? rounded - 1 : rounded;
}
