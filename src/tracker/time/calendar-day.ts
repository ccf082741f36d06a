/** A calendar day of the shop, `2026-11-28`. */
export type CalendarDay = string;

/** Whether a text is a day that a calendar has: `2026-02-29` is none. */
export function isCalendarDay(text: string): boolean {
  const [, year, month, day] = /^(\d{4})-(\d{2})-(\d{2})$/.exec(text) ?? [];
  const noon = new Date(Date.UTC(Number(year), Number(month) - 1, Number(day), 12));
  return !Number.isNaN(noon.valueOf()) && noon.toISOString().startsWith(text);
}
