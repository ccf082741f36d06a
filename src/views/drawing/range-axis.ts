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

/**
 * The labels above the pictures, each beginning at its tick, the last one ending at the edge; what would touch is left out.
 * What ratios are held against is left out last: it may stand over its tick, and before the ends.
 */
export function rangeAxisLine(axis: RangeAxis, width: number): Line {
  const [inner, ends] = [
    axis.ticks.slice(1, -1),
    [...axis.ticks.slice(0, 1), ...axis.ticks.slice(-1)],
  ];
  const usual = labelled(axis, [...ends, ...inner], width);
  const isWhole = axis.scale === 'linear' || inner.every(({ label }) => usual.includes(label));
  return lineOf(isWhole ? usual : labelled(axis, [...inner, ...ends], width), 'quiet');
}

function labelled(axis: RangeAxis, ticks: RangeAxis['ticks'], width: number): string {
  const cells = Array.from({ length: Math.max(0, width) }, () => ' ');
  for (const { at, label } of ticks) {
    const tick = cellOnAxis(at, axis, width);
    const places = axis.scale === 'linear' ? [tick] : [tick, tick - Math.floor(label.length / 2)];
    const place = places
      .map((from) => Math.min(from, width - label.length))
      .find(
        (from) => from >= 0 && isFree(cells.slice(Math.max(0, from - 1), from + label.length + 1)),
      );
    if (place !== undefined) cells.splice(place, label.length, ...label);
  }
  return cells.join('');
}

const isFree = (cells: readonly string[]): boolean => cells.every((cell) => cell === ' ');

/** Halves go to the even side, so that they don't all lean to the right. */
function roundHalfEven(value: number): number {
  const rounded = Math.round(value);
  return rounded - value === 0.5 && rounded % 2 !== 0 ? rounded - 1 : rounded;
}
