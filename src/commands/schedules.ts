import {
  expectedMinutes,
  outlookAround,
  rangeOfSum,
  scheduleDays,
  scheduleFigures,
} from '../tracker/estimate/index.ts';
import type { FinishingSchedule } from '../tracker/trade/index.ts';
import { daysOrMore, stepsAndHours } from '../views/format/index.ts';
import { tellProblems } from '../persist/schedules/index.ts';
import { problemJson } from './json/problem-json.ts';
import type { SchedulesJson } from './json-shapes/index.ts';
import { isFailure, type CommandFile } from './line/command.ts';
import { look } from './line/look.ts';
import { readLibrary } from './read/find-schedule.ts';
import { inColumns } from './text/columns.ts';

export const schedules: CommandFile = {
  help: 'Your own lie in the folder "schedules" beside your data.',
  run: async (room) => {
    const { schedules: all, problems } = await readLibrary(room);
    const shop = await look(room);
    if (isFailure(shop)) return shop;
    const around = outlookAround(shop.settings, shop.sense, shop.now);
    const listed = all.map((schedule) => ({
      schedule,
      figures: scheduleFigures(schedule),
      days: scheduleDays(shop.bench, schedule, around),
    }));
    tellProblems(problems).forEach(room.tell);
    return {
      lines: () =>
        inColumns(
          listed.map(({ schedule: { id, summary }, figures, days }) => [
            id,
            `${stepsAndHours(figures)}, ${daysOrMore(days)}`,
            summary,
          ]),
        ),
      json: (): SchedulesJson => ({
        schedules: listed.map(({ schedule, figures, days }) => ({
          id: schedule.id,
          name: schedule.name,
          summary: schedule.summary,
          steps: schedule.steps.length,
          ...minutesOfAll(schedule),
          leastSteps: figures.leastSteps,
          mostSteps: figures.mostSteps,
          shortestMinutes: figures.lowMinutes,
          longestMinutes: figures.highMinutes,
          leastDays: days.least,
          mostDays: days.most,
        })),
        problems: problems.map(problemJson),
      }),
    };
  },
};

/** Every step of the file added up, also those that are never in together. */
function minutesOfAll({
  steps,
}: FinishingSchedule): Pick<SchedulesJson['schedules'][number], 'lowMinutes' | 'highMinutes'> {
  const sum = rangeOfSum(steps.map((step) => expectedMinutes(step, { areaM2: null })));
  return { lowMinutes: sum?.low ?? 0, highMinutes: sum?.high ?? 0 };
}
