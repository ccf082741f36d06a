import { resolve } from 'node:path';
import { calendarEvents, type CalendarEvent } from './calendar/calendar-events.ts';
import { calendarText, producer } from './calendar/calendar-text.ts';
import { iso } from './json/iso.ts';
import type { CalendarJson } from './json-shapes/index.ts';
import { isFailure, type Answer, type CommandFile } from './line/command.ts';
import { look, type Look } from './line/look.ts';
import { writeNamed } from './write-named.ts';

export const calendar: CommandFile = {
  takes: '[file]',
  help: 'Holds too, each with an alarm (RFC 5545). Without a file it is printed. Written again, each entry takes the place of the one before.',
  run: async (room, given) => {
    const shop = await look(room);
    if (isFailure(shop)) return shop;
    const events = calendarEvents(shop);
    const text = calendarText(events, room.now);
    const typed = given.maybe('file');
    if (typed === null)
      return {
        lines: () => text.trimEnd().split(/\r?\n/),
        json: () => shapeOf(events, null, shop),
      };
    const path = resolve(room.world.cwd, typed);
    const problem = writeNamed(path, text, {
      is: "calendar of recoat's",
      has: (before) => before.includes(`PRODID:${producer}`),
    });
    if (problem !== null) return problem;
    return written(path, events, shop);
  },
};

const written = (path: string, events: readonly CalendarEvent[], shop: Look): Answer => ({
  lines: () => [`${events.length} ${events.length === 1 ? 'entry' : 'entries'} in ${path}`],
  json: () => shapeOf(events, path, shop),
});

const shapeOf = (
  events: readonly CalendarEvent[],
  file: string | null,
  { shop }: Look,
): CalendarJson => ({
  file,
  entries: events.map(({ id, summary, description, when, alarms }) => ({
    id,
    summary,
    description,
    from: 'day' in when ? when.day : iso(when.from, shop.zone),
    to: 'day' in when ? null : iso(when.to, shop.zone),
    alarms: alarms.map(({ at, says }) => ({ at: iso(at, shop.zone), says })),
  })),
});
