import { minute, type Instant } from '../../tracker/time/index.ts';
import { clock, type ShopClock } from '../format/clock.ts';
import { wallTime } from '../format/zone.ts';
import { barScale, cellOf, columnOf, narrowestBar, type BarScale } from './bar-scale.ts';
import { lineOf, type Line } from './line.ts';

export type TimeAxisInput = {
  readonly now: Instant;
  readonly farEnd: Instant;
  readonly width: number;
  readonly shop: ShopClock;
};

/** A label, and the cell at which it would begin. */
type Label = { readonly text: string; readonly cell: number };

const quarter = 15 * minute;

/**
 * The labels above the bars: now, round quarters in the next hour, then hours up to the far end. Each begins at its own
 * column; one that would touch another is left out, the more telling first: 18, 24, 06 and 12, then the threes, then any hour.
 */
export function timeAxis({ now, farEnd, width, shop }: TimeAxisInput): Line {
  if (width < narrowestBar) return [];
  const scale = barScale(now, farEnd, width);
  const cells = Array.from({ length: width }, () => ' ');
  for (const label of [
    { text: withoutHalf(clock(now, shop)), cell: 0 },
    ...quarterLabels(scale, shop),
    ...hourLabels(scale, width, shop),
  ]) {
    place(label, cells);
  }
  return lineOf(cells.join(''), 'quiet');
}

function place({ text, cell }: Label, cells: string[]): void {
  if (cell + text.length > cells.length) return;
  const around = cells.slice(Math.max(0, cell - 1), cell + text.length + 1);
  if (around.every((taken) => taken === ' ')) cells.splice(cell, text.length, ...text);
}

/** Round quarters of the next hour that end before the break. Offsets from UTC are whole quarters, so UTC's are the shop's. */
function quarterLabels(scale: BarScale, shop: ShopClock): readonly Label[] {
  const labels: Label[] = [];
  for (let at = Math.ceil(scale.now / quarter) * quarter; at < scale.hourEnds; at += quarter) {
    const label = { text: withoutHalf(clock(at, shop)), cell: cellOf(columnOf(at, scale), scale) };
    if (label.cell + label.text.length <= scale.left + 1) labels.push(label);
  }
  return labels;
}

function hourLabels(scale: BarScale, width: number, shop: ShopClock): readonly Label[] {
  const labels: (Label & { readonly weight: number })[] = [];
  for (let at = Math.ceil(scale.hourEnds / quarter) * quarter; at <= scale.farEnd; at += quarter) {
    const wall = wallTime(at, shop.zone);
    if (wall.minute !== 0) continue;
    const text = hourText(wall.hour, shop);
    // The far end itself has no column of its own: its label ends at the edge.
    const cell = at < scale.farEnd ? cellOf(columnOf(at, scale), scale) : width - text.length;
    labels.push({ text, cell, weight: wall.hour % 6 === 0 ? 0 : wall.hour % 3 === 0 ? 1 : 2 });
  }
  return labels.sort((a, b) => a.weight - b.weight);
}

/** `18`, `24`, `03`; `6pm`, `12am`. */
const hourText = (hour: number, shop: ShopClock): string =>
  shop.hours === '24'
    ? String(hour === 0 ? 24 : hour).padStart(2, '0')
    : `${hour % 12 || 12}${hour < 12 ? 'am' : 'pm'}`;

/** Within the next hour am and pm are known. */
const withoutHalf = (text: string): string => text.replace(/ [ap]m$/, '');
