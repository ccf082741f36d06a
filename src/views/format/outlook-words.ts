import type { BenchDays, PieceOutlook } from '../../tracker/estimate/index.ts';
import { hoursRange, rangeInWords } from './ranges.ts';

/** `7 to 19 h, 4 times in 5`; a chance of 0.8 is told as "4 times in 5". */
export const outlookHours = ({ lowMinutes, highMinutes, chance }: PieceOutlook): string =>
  `${hoursRange(lowMinutes, highMinutes)}, ${timesIn(chance)}`;

export const timesIn = (chance: number): string =>
  Math.abs(chance - 0.8) < 0.005 ? '4 times in 5' : `${Math.round(chance * 10)} times in 10`;

/** `at least 12 to 14 days`; a range where the branches that a piece can still go through differ. */
export const daysAtLeast = ({ least, most }: BenchDays): string =>
  `at least ${rangeInWords(least, most)} ${most === 1 ? 'day' : 'days'}`;

/** `, 12 to 13 by the labels` where the air, or what checks have taught, makes another number of days; else nothing. */
export const daysByLabel = ({ days, labelDays }: PieceOutlook): string =>
  days.least === labelDays.least && days.most === labelDays.most
    ? ''
    : `, ${rangeInWords(labelDays.least, labelDays.most)} by the labels`;

/** In a list: `12+ days`, the least on the shortest way. */
export const daysOrMore = ({ least }: BenchDays): string =>
  `${least}+ ${least === 1 ? 'day' : 'days'}`;
