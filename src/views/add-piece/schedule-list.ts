import {
  outlookAround,
  scheduleDays,
  scheduleFigures,
  type BenchDays,
  type ScheduleFigures,
} from '../../tracker/estimate/index.ts';
import type { Instant } from '../../tracker/time/index.ts';
import type { FinishingSchedule } from '../../tracker/trade/index.ts';
import { fitEnd, width } from '../drawing/index.ts';
import { daysOrMore, hoursAlone, stepsAndHours } from '../format/index.ts';
import type { PickItem } from '../parts/pick-page.ts';
import type { Snapshot } from '../port.ts';
import type { View } from '../screen.ts';

/** Names longer than this are cut, so that the figures stand under each other. */
const longestName = 30;

/** In fewer cells than these nothing can be told of what a schedule is for. */
const leastOfSummary = 24;
/** What a list sets before a line: the mark, the digit and the spaces round them. */
const beforeLabel = 7;

/** One line for each finishing schedule: its name, how many steps, how long at work and on the bench, and what it is for. */
export function scheduleItems(
  schedules: readonly FinishingSchedule[],
  { columns, theme, snapshot, now }: Pick<View, 'columns' | 'theme' | 'snapshot' | 'now'>,
): readonly PickItem[] {
  const names = schedules.map(({ name }) => width(name));
  const room = columns < 60 ? columns - 22 : longestName;
  const nameCells = Math.min(room, Math.max(0, ...names));
  const figures = schedules.map((schedule) => {
    if (columns < 60) return hoursAlone(keptFigures(schedule));
    const days = keptDays(schedule, snapshot, now);
    return `${stepsAndHours(keptFigures(schedule))}${days === null ? '' : `, ${daysOrMore(days)}`}`;
  });
  const figureCells = Math.max(0, ...figures.map(width));
  const left = columns - beforeLabel - nameCells - figureCells - 4;
  return schedules.map(({ id, name, summary }, index) => ({
    value: id,
    whole: summary,
    label: [
      fitEnd(name, nameCells, theme.glyphs),
      fitEnd(figures[index] ?? '', figureCells),
      ...(columns < 60 || left < leastOfSummary ? [] : [summary]),
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

type KeptDays = Pick<Snapshot, 'sense' | 'settings'> & { readonly days: BenchDays };
const daysOf = new WeakMap<FinishingSchedule, KeptDays>();

/** Likewise, for as long as the air and the settings are the same. Null for one without steps. */
function keptDays(
  schedule: FinishingSchedule,
  { bench, sense, settings }: Snapshot,
  now: Instant,
): BenchDays | null {
  if (schedule.steps.length === 0) return null;
  const kept = daysOf.get(schedule);
  if (kept?.sense === sense && kept.settings === settings) return kept.days;
  const days = scheduleDays(bench, schedule, outlookAround(settings, sense, now));
  daysOf.set(schedule, { sense, settings, days });
  return days;
}
