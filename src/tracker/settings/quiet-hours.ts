/** Clock times of the shop: from the first to before the second, over midnight where that is earlier. */
export type QuietHours = { readonly from: string; readonly to: string };

/** Reads `22:00-7:00`, `22-7`, `none`; null where it is none of them, or from a time to itself. */
export function readQuietHours(text: string): QuietHours | 'none' | null {
  const typed = text.trim().toLowerCase();
  if (typed === 'none') return 'none';
  const ends = typed.split(/\s*(?:-|–|to)\s*/);
  const [from = null, to = null] = ends.map(clockTime);
  return ends.length !== 2 || from === null || to === null || from === to ? null : { from, to };
}

function clockTime(text: string): string | null {
  const [, hours, minutes = '00'] = /^(\d{1,2})(?::(\d{2}))?$/.exec(text) ?? [];
  if (hours === undefined || Number(hours) > 23 || Number(minutes) > 59) return null;
  return `${hours.padStart(2, '0')}:${minutes}`;
}

/** As it is written in the settings: `22:00-07:00`. */
export const quietHoursText = (hours: QuietHours): string => `${hours.from}-${hours.to}`;
