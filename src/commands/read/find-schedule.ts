import {
  readScheduleFolders,
  tellProblems,
  type ScheduleLibrary,
} from '../../persist/schedules/index.ts';
import { scheduleFolders } from '../../shell/port.ts';
import type { FinishingSchedule } from '../../tracker/trade/index.ts';
import type { Failure } from '../line/command.ts';
import type { Room } from '../line/room.ts';
import { findNamed } from '../names/match.ts';

export const readLibrary = (room: Room): Promise<ScheduleLibrary> =>
  readScheduleFolders(scheduleFolders(room.world, room.folder));

/** A finishing schedule by its id, its name or the beginning of that. Files with problems are told and left out. */
export async function findSchedule(
  typed: string,
  not: string,
  room: Room,
): Promise<FinishingSchedule | Failure> {
  const { schedules, problems } = await readLibrary(room);
  tellProblems(problems).forEach(room.tell);
  // A copy under another id bears the same name; its id tells it apart.
  const exact = schedules.find((schedule) => schedule.id === typed.trim());
  if (exact !== undefined) return exact;
  return findNamed(
    typed,
    schedules.map((schedule) => ({
      thing: schedule,
      called: schedule.id,
      names: [schedule.id, schedule.name],
      name: schedule.id,
    })),
    { not, what: 'finishing schedule' },
  );
}
