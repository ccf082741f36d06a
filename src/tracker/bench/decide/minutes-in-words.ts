/** From here on hours read better. A figure like 1:20 would be a count-down of seconds. */
const minutesTold = 100;

/** `80 min`, `2 h 03`. */
export function minutesInWords(minutes = 0): string {
  if (minutes < minutesTold) return `${minutes} min`;
  return `${Math.floor(minutes / 60)} h ${String(minutes % 60).padStart(2, '0')}`;
}
