import { day, hour, minute, type Milliseconds } from '../../tracker/time/index.ts';

/** A length of time as a label gives it: `45 min`, `2 h`, `1 h 30`, `72 h`, `21 d`. */
export function labelLength(ms: Milliseconds): string {
  const minutes = Math.round(ms / minute);
  if (minutes < 60 || (minutes < 100 && minutes % 60 !== 0)) return `${minutes} min`;
  const hours = Math.floor((minutes * minute) / hour);
  if (hours > 96) return `${Math.round(ms / day)} d`;
  const rest = minutes % 60;
  // Beyond a day the minutes decide nothing.
  return rest === 0 || hours >= 24 ? `${hours} h` : `${hours} h ${String(rest).padStart(2, '0')}`;
}
