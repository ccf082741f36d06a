import ical, { ICalAlarmType } from 'ical-generator';
import { second, type Instant } from '../../tracker/time/index.ts';
import type { CalendarEvent } from './calendar-events.ts';

/** Marks the files that the program may write over. The library writes its first hyphen itself. */
export const producer = '-//recoat//recoat//EN';

/** From here on editions are counted, in seconds: they fit RFC 5545's integers until 2088. */
const editionsBegin = Date.UTC(2020, 0, 1);

/**
 * Grows with every writing, so that a calendar takes the newer of two. What was told of a piece can't be counted for it: a
 * deed that was taken back would make it smaller, and a reading moves a window of which nothing was told.
 */
const editionAt = (now: Instant): number => Math.floor((now - editionsBegin) / second);

/**
 * The events as an iCalendar file (RFC 5545): instants in UTC, days as dates. Unique ids are those of the events, so that a
 * calendar that takes it in again puts each in the place of the one before.
 */
export function calendarText(events: readonly CalendarEvent[], now: Instant): string {
  const calendar = ical({ prodId: producer.slice(1), name: 'recoat' });
  for (const { id, summary, description, when, alarms } of events) {
    const event = calendar.createEvent({
      id: `${id}@recoat`,
      stamp: new Date(now),
      sequence: editionAt(now),
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
