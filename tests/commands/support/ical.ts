import { createRequire } from 'node:module';

/** ical.js reads RFC 5545. Its own types don't pass the compiler's check of libraries: these are the parts used here. */
type IcalTime = {
  readonly isDate: boolean;
  readonly toJSDate: () => Date;
  readonly toString: () => string;
};
type IcalComponent = {
  readonly getAllSubcomponents: (name: string) => readonly IcalComponent[];
  readonly getFirstPropertyValue: (name: string) => unknown;
};
type Ical = {
  readonly parse: (text: string) => unknown;
  readonly Component: new (parsed: unknown) => IcalComponent;
  readonly Event: new (component: IcalComponent) => {
    readonly uid: string;
    readonly summary: string;
    readonly sequence: number;
    readonly startDate: IcalTime;
    readonly endDate: IcalTime;
  };
};

const require = createRequire(import.meta.url);
const ical = require('ical.js') as Ical;

/** The day, or the instant in UTC. */
const told = (time: IcalTime): string =>
  time.isDate ? time.toString() : time.toJSDate().toISOString();

/** The entries of a calendar, as a library reads them that had no part in writing it. */
export const readCalendar = (text: string) =>
  new ical.Component(ical.parse(text)).getAllSubcomponents('vevent').map((entry) => {
    const { uid, summary, sequence, startDate, endDate } = new ical.Event(entry);
    return {
      uid,
      summary,
      sequence,
      allDay: startDate.isDate,
      start: told(startDate),
      end: told(endDate),
      alarms: entry
        .getAllSubcomponents('valarm')
        .map((alarm) => told(alarm.getFirstPropertyValue('trigger') as IcalTime)),
    };
  });
