import { piecesOnBench } from '../../tracker/bench/index.ts';
import type { Snapshot } from '../port.ts';
import type { HoursPage, HoursState } from '../screens.ts';

/** Ways of looking at all finished pieces, in the order in which Tab goes through them. */
export const hoursPages: readonly HoursPage[] = [
  'classes',
  'schedules',
  'over time',
  'ranges',
  'back-test',
  'where',
];

/** Those that look over what was recorded, as it was recorded. */
export type ReviewPage = Exclude<HoursPage, 'back-test'>;
export const isReviewPage = (page: HoursPage): page is ReviewPage => page !== 'back-test';

/** What each is called in the foot. */
const called: Readonly<Record<HoursPage, string>> = {
  classes: 'all pieces',
  schedules: 'by schedule',
  'over time': 'over time',
  ranges: 'past ranges',
  'back-test': 'back-test',
  where: 'where the hours went',
};

export const pageOf = ({ page }: Pick<HoursState, 'page'>): HoursPage => page ?? 'classes';

/** The page that Tab leads to; null is the piece. */
export const pageAfter = (page: HoursPage): HoursPage | null =>
  hoursPages[hoursPages.indexOf(page) + 1] ?? null;

/** The page before, for the arrow to the left; null is the piece. */
export const pageBefore = (page: HoursPage): HoursPage | null =>
  hoursPages[hoursPages.indexOf(page) - 1] ?? null;

/** `Tab by schedule`; from the last page on to a piece, or where there is none to the first page again. */
export function tabHint(page: HoursPage, hasPiece: boolean): string {
  const next = pageAfter(page) ?? (hasPiece ? null : 'classes');
  return `Tab ${next === null ? 'one piece' : called[next]}`;
}

/** The piece that is shown after the last page: the one that was shown before, else the first on the bench; null is none. */
export const pieceTurnedTo = (
  { last }: Pick<HoursState, 'last'>,
  { bench }: Pick<Snapshot, 'bench'>,
): string | null => last ?? piecesOnBench(bench)[0]?.id ?? null;
