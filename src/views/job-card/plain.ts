import type { JobCard } from '../../tracker/bench/index.ts';
import type { Instant } from '../../tracker/time/index.ts';
import { plain } from '../drawing/index.ts';
import type { Shop } from '../port.ts';
import { cardLines } from './card-lines.ts';

/** A job card as plain text, lines of at most `columns` cells, ending with a line break. Control characters are written out. */
export const jobCardText = (card: JobCard, now: Instant, shop: Shop, columns = 80): string =>
  `${cardLines(card, now, shop, columns)
    .map((line) => plain(line).trimEnd())
    .join('\n')}\n`;
