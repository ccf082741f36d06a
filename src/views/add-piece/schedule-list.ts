import { scheduleFigures, type ScheduleFigures } from '../../tracker/estimate/index.ts';
import type { FinishingSchedule } from '../../tracker/trade/index.ts';
import { fitEnd, width } from '../drawing/index.ts';
import { hoursAlone, stepsAndHours } from '../format/index.ts';
import type { PickItem } from '../parts/pick-page.ts';
import type { View } from '../screen.ts';

/** Names longer than this are cut, so that the figures stand under each other. */
const longestName = 30;

/** One line for each finishing schedule: its name, how many steps, how long, and what it is for. */
export function scheduleItems(
  schedules: readonly FinishingSchedule[],
  { columns, theme }: Pick<View, 'columns' | 'theme'>,
): readonly PickItem[] {
  const names = schedules.map(({ name }) => width(name));
  const room = columns < 60 ? columns - 22 : longestName;
  const nameCells = Math.min(room, Math.max(0, ...names));
  const figures = schedules.map((schedule) =>
    (columns >= 60 ? stepsAndHours : hoursAlone)(keptFigures(schedule)),
  );
  const figureCells = Math.max(0, ...figures.map(width));
  return schedules.map(({ id, name, summary }, index) => ({
    value: id,
    whole: summary,
    label: [
      fitEnd(name, nameCells, theme.glyphs),
      fitEnd(figures[index] ?? '', figureCells),
      ...(columns < 60 ? [] : [summary]),
    ].join('  '),
  }));
}

const figuresOf = new WeakMap<FinishingSchedule, ScheduleFigures>();

/** Kept from frame to frame: trying every branch takes longer than a frame should. */
function keptFigures(schedule: FinishingSchedule): ScheduleFigures {
  const figures = figuresOf.get(schedule) ?? scheduleFigures(schedule);
  figuresOf.set(schedule, figures);
  return figures;
}
