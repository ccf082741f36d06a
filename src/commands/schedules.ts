import { expectedMinutes, rangeOfSum } from '../tracker/estimate/index.ts';
import type { FinishingSchedule } from '../tracker/trade/index.ts';
import { hoursRange } from '../views/format/index.ts';
import { tellProblem } from '../persist/schedules/index.ts';
import { problemJson } from './json/problem-json.ts';
import type { SchedulesJson } from './json-shapes/index.ts';
import type { CommandFile } from './line/command.ts';
import { readLibrary } from './read/find-schedule.ts';
import { inColumns } from './text/columns.ts';

export const schedules: CommandFile = {
  help: 'Your own lie in the folder "schedules" beside your data.',
  run: async (room) => {
    const { schedules: all, problems } = await readLibrary(room);
    const listed = all.map((schedule) => ({ schedule, sum: minutesOf(schedule) }));
    problems.forEach((problem) => room.tell(tellProblem(problem)));
    return {
      lines: () =>
        inColumns(
          listed.map(({ schedule: { id, steps, summary }, sum }) => [
            id,
            `${steps.length} steps, ${hoursRange(sum.low, sum.high)}`,
            summary,
          ]),
        ),
      json: (): SchedulesJson => ({
        schedules: listed.map(({ schedule: { id, name, summary, steps }, sum }) => ({
          id,
          name,
          summary,
          steps: steps.length,
          lowMinutes: sum.low,
          highMinutes: sum.high,
        })),
        problems: problems.map(problemJson),
      }),
    };
  },
};

/** What the schedule expects on its reference piece. */
function minutesOf({ steps }: FinishingSchedule): { readonly low: number; readonly high: number } {
  const sum = rangeOfSum(steps.map((step) => expectedMinutes(step, { areaM2: null })));
  return { low: sum?.low ?? 0, high: sum?.high ?? 0 };
}
