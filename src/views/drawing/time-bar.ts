import type { Instant } from '../../tracker/time/index.ts';
import type { TimedStretch } from '../../tracker/windows/index.ts';
import { isHarmless } from '../format/outlook.ts';
import { barScale, columnOf, middleOf, narrowestBar, type BarScale } from './bar-scale.ts';
import { glyphSets, type Glyphs, type GlyphSet } from './glyphs.ts';
import { merged, type Line, type Segment } from './line.ts';

export type TimeBarInput = {
  readonly now: Instant;
  /** In order, each beginning where the one before it ends; none for a piece without a window. */
  readonly stretches: readonly TimedStretch[];
  /** The window is over and done with: only now and the break are drawn. */
  readonly closed: boolean;
  /** Segments of the whole bar. */
  readonly width: number;
  /** The right edge: the noon after the coming night. */
  readonly farEnd: Instant;
  readonly glyphs: GlyphSet;
  /** The first edge hangs on an assumed stamp, or on air that nobody read. */
  readonly uncertain: boolean;
};

/** A window drawn on the axis that all bars share: now, the next hour, a break, the time up to the far end. */
export function timeBar({
  now,
  stretches,
  closed,
  width,
  farEnd,
  glyphs,
  uncertain,
}: TimeBarInput): Line {
  if (width < narrowestBar) return [];
  const signs = glyphSets[glyphs];
  const scale = barScale(now, farEnd, width);
  const shown = closed
    ? []
    : stretches.filter((stretch) => stretch.ends === null || stretch.ends > stretch.begins);
  const cells = Array.from({ length: scale.left + scale.right }, (_, column) =>
    fillOf(column, shown, scale, signs),
  );
  drawEdges(cells, shown, scale, signs, uncertain);
  return merged([
    { text: signs.now, role: 'text' },
    ...cells.slice(0, scale.left),
    { text: signs.break, role: 'quiet' },
    ...cells.slice(scale.left),
  ]);
}

/** A column takes the stretch at its middle. */
function fillOf(
  column: number,
  stretches: readonly TimedStretch[],
  scale: BarScale,
  signs: Glyphs,
): Segment {
  const middle = middleOf(column, scale);
  const index = stretches.findIndex(
    (stretch) => stretch.begins <= middle && (stretch.ends === null || middle < stretch.ends),
  );
  const stretch = stretches[index];
  return stretch === undefined
    ? { text: ' ', role: 'text' }
    : look(stretch, stretches[index + 1], signs);
}

function look(stretch: TimedStretch, next: TimedStretch | undefined, signs: Glyphs): Segment {
  switch (stretch.meaning) {
    case 'wait':
      return { text: signs.wait, role: 'quiet' };
    case 'go':
      return {
        text: next !== undefined && !isHarmless(next) ? signs.goTill : signs.goAfter,
        role: 'go',
      };
    case 'go after work':
      return { text: signs.afterWork, role: 'work lost' };
    case 'keep off':
      return { text: signs.keepOff, role: 'keep off' };
    case 'late':
      if (isHarmless(stretch)) return { text: signs.goAfter, role: 'go' };
      return { text: signs.late, role: stretch.loss === 'spoils' ? 'spoils' : 'work lost' };
  }
}

/** The sign between two stretches; null where neither opens nor closes anything. */
function edgeOf(before: TimedStretch, after: TimedStretch, signs: Glyphs): Segment | null {
  const wasOpen = isHarmless(before) || before.meaning === 'go after work';
  if (isHarmless(after)) return isHarmless(before) ? null : { text: signs.opens, role: 'go' };
  switch (after.meaning) {
    case 'go':
    case 'go after work':
      return { text: wasOpen ? signs.closes : signs.opens, role: 'work lost' };
    case 'wait':
      return wasOpen ? { text: signs.closes, role: 'work lost' } : null;
    case 'keep off':
      return wasOpen ? { text: signs.shuts, role: 'keep off' } : null;
    case 'late':
      return after.loss === 'spoils'
        ? { text: signs.shuts, role: 'spoils' }
        : { text: signs.closes, role: 'work lost' };
  }
}

/** Puts the edges into the columns in which they fall. In one column a closing wins over an opening, what spoils over what costs work. */
function drawEdges(
  cells: Segment[],
  stretches: readonly TimedStretch[],
  scale: BarScale,
  signs: Glyphs,
  isUncertain: boolean,
): void {
  const rank = [signs.opens, signs.closes, signs.shuts];
  const drawn = new Map<number, Segment>();
  let first: number | undefined;
  let isBeyond = false;
  for (const [index, after] of stretches.entries()) {
    const before = stretches[index - 1];
    const edge = before === undefined ? null : edgeOf(before, after, signs);
    if (edge === null || after.begins <= scale.now) continue;
    if (after.begins >= scale.farEnd) {
      isBeyond = true;
      break;
    }
    const column = columnOf(after.begins, scale);
    first ??= column;
    const there = drawn.get(column);
    if (there === undefined || rank.indexOf(edge.text) > rank.indexOf(there.text))
      drawn.set(column, edge);
  }
  for (const [column, edge] of drawn) {
    cells[column] =
      isUncertain && column === first ? { text: signs.assumed, role: edge.role } : edge;
  }
  const last = cells.length - 1;
  if (isBeyond && !drawn.has(last))
    cells[last] = { text: signs.beyond, role: cells[last]?.role ?? 'text' };
}
