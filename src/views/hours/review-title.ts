import type { Review } from '../../tracker/review/index.ts';
import { fullDay, shopDay, shortDay, type Zone } from '../format/index.ts';

type Counted = Pick<Review, 'pieces' | 'imported' | 'since' | 'until'>;

/** `hours: 14 finished pieces, 12 of them imported, 11 Jun to 2 Nov`; in few cells `hours: 14 finished, 12 imported, ...` */
export function reviewTitle(review: Counted, zone: Zone, columns: number): string {
  const days = daysWords(review, zone);
  if (days === null)
    return 'hours: no finished piece yet. A piece counts when its steps are done or it has left the bench.';
  const whole = `hours: ${finishedCount(review)}, ${days}`;
  if (whole.length <= columns) return whole;
  const { pieces, imported } = review;
  const some = imported === pieces ? 'all' : String(imported);
  return `hours: ${pieces} finished${imported === 0 ? '' : `, ${some} imported`}, ${days}`;
}

/** `14 finished pieces, 12 of them imported` */
export function finishedCount({ pieces, imported }: Pick<Review, 'pieces' | 'imported'>): string {
  const count = `${pieces} finished ${pieces === 1 ? 'piece' : 'pieces'}`;
  if (imported === 0) return count;
  if (imported === pieces) return `${count}, ${pieces === 1 ? '' : 'all '}imported`;
  return `${count}, ${imported} of them imported`;
}

/** `11 Jun to 2 Nov`, the days on which the first and the last of them were finished. */
function daysWords({ since, until }: Counted, zone: Zone): string | null {
  if (since === null || until === null) return null;
  const [from, to] = [shopDay(since, zone), shopDay(until, zone)];
  if (from === to) return shortDay(from);
  return from.slice(0, 4) === to.slice(0, 4)
    ? `${shortDay(from)} to ${shortDay(to)}`
    : `${fullDay(from)} to ${fullDay(to)}`;
}
