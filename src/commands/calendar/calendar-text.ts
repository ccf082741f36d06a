import ical, { ICalAlarmType } from 'ical-generator';
import type { Instant } from '../../tracker/time/index.ts';
import type { CalendarEvent } from './calendar-events.ts';

/** Marks the files that the program may write over. The library writes its first hyphen itself. */
export const producer = '-//recoat//recoat//EN';

/**
 * The events as an iCalendar file (RFC 5545): instants in UTC, days as dates. Unique ids are those of the events, so that a
 * calendar that takes it in again puts each in the place of the one before.
 */
export function calendarText(events: readonly CalendarEvent[], now: Instant): string {
  const calendar = ical({ prodId: producer.slice(1), name: 'recoat' });
  for (const { id, summary, description, when, alarms, edition } of events) {
    const event = calendar.createEvent({
      id: `${id}@recoat`,
      stamp: new Date(now),
      sequence: edition,
      summary,
      ...('day' in when
        ? // All-day events are written by the date that the library reads from it in UTC.
          { start: new Date(`${when.day}T00:00:00Z`), allDay: true, timezone: 'UTC' }
        : { start: new Date(when.from), end: new Date(when.to) }),
      ...(description === '' ? {} : { description }),
    });
    for (const { at, says } of alarms)
      event.createAlarm({
        type: ICalAlarmType.display,
        trigger: new Date(at),
        description: says,
      });
  }
  return calendar.toString();
}
