import { failure, isFailure, type CommandFile } from './line/command.ts';
import { record } from './line/record.ts';
import { descriptionGiven, descriptionOptions } from './read/description.ts';
import { findSchedule } from './read/find-schedule.ts';
import { foreseen } from './read/foreseen.ts';

export const add: CommandFile = {
  beginsStore: true,
  takes: '<name...>',
  options: [
    ['--schedule <id>', 'the finishing schedule; "schedules" lists them'],
    ...descriptionOptions,
  ],
  help: 'Only the schedule must be named; all else can be told later with "describe".',
  run: async (room, given) => {
    const id = given.maybe('schedule');
    if (id === null)
      return failure(
        'usage',
        'Not added: name its finishing schedule: --schedule ID. See: recoat schedules',
      );
    const schedule = await findSchedule(id, 'Not added', room);
    if (isFailure(schedule)) return schedule;
    return record(room, (look) => {
      const describe = descriptionGiven(given, look, 'Not added');
      if (isFailure(describe)) return describe;
      return {
        intents: [{ do: 'add piece', name: given.sentence('name'), schedule, describe }],
        foresees: foreseen,
      };
    });
  },
};
