import { normalShare } from '../learning/normal-share.ts';

/** Whether values that came one after another rise or fall. */
export type Trend = {
  readonly direction: 'rising' | 'falling' | 'level';
  /** How often mere luck would put them at least so much in order, in either direction, 0..1. */
  readonly byLuck: number;
};

/** Below so many values even a perfect order may be luck. */
export const fewestForTrend = 8;

/** What comes by luck more often than once in ten is called none. */
const mostByLuck = 0.1;

/**
 * The Mann-Kendall test with its correction for values that are alike (Mann, Nonparametric tests against trend,
 * Econometrica 13 (1945) 245-259; Kendall, Rank Correlation Methods, 4th ed., ch. 4): it asks only which of two values
 * is larger, so that one odd piece moves it little. Null for fewer than eight values.
 */
export function trendOf(values: readonly number[]): Trend | null {
  const count = values.length;
  if (count < fewestForTrend) return null;
  let score = 0;
  for (const [i, later] of values.entries())
    for (const earlier of values.slice(0, i)) score += Math.sign(later - earlier);
  const alike = [...Map.groupBy(values, (value) => value).values()].map(({ length }) => length);
  const ties = alike.reduce((sum, length) => sum + spread(length), 0);
  const variance = (spread(count) - ties) / 18;
  if (!(variance > 0)) return { direction: 'level', byLuck: 1 };
  const beyond = Math.max(0, Math.abs(score) - 1) / Math.sqrt(variance);
  const byLuck = 2 * normalShare(-beyond);
  if (byLuck > mostByLuck) return { direction: 'level', byLuck };
  return { direction: score > 0 ? 'rising' : 'falling', byLuck };
}

const spread = (count: number): number => count * (count - 1) * (2 * count + 5);
