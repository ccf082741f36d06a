import { expectedMinutes, rangeOfSum } from '../../tracker/estimate/index.ts';
import type { FinishingSchedule } from '../../tracker/trade/index.ts';
import { fitEnd, width } from '../drawing/index.ts';
import { hoursRange } from '../format/index.ts';
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
  const figures = schedules.map((schedule) => figuresOf(schedule, columns >= 60));
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

/** `9 steps, 6 to 9 h`: the hours that the schedule expects on its reference piece. */
function figuresOf({ steps }: FinishingSchedule, withSteps: boolean): string {
  const sum = rangeOfSum(steps.map((step) => expectedMinutes(step, { areaM2: null })));
  const hours = sum === null ? 'no steps' : hoursRange(sum.low, sum.high);
  return withSteps ? `${steps.length} step${steps.length === 1 ? '' : 's'}, ${hours}` : hours;
}
