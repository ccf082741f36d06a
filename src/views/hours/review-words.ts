import { fewestForTrend, type Review, type WhereHoursWent } from '../../tracker/review/index.ts';
import { day, minute } from '../../tracker/time/index.ts';
import { minutesSpent, times } from '../format/index.ts';
import { fewPieces, heldWords } from './furthest-off.ts';

const counted = (count: number, unit: string): string =>
  `${count} ${unit}${count === 1 ? '' : 's'}`;

/** `strip: 3 h 10 over estimate on 8 pieces, mostly on Cane rocker` */
export function costlyWords({
  stepClass,
  over,
  pieces,
  mostly,
}: Review['costliest'][number]): string {
  const most = mostly === null ? '' : `, mostly on ${mostly.name}`;
  const few = pieces < fewPieces ? '; few pieces yet' : '';
  return `${stepClass}: ${minutesSpent(Math.round(over) * minute)} over estimate on ${counted(pieces, 'piece')}${most}${few}`;
}

/** Whether the minutes drift against the estimates, or why nothing is said. */
export function trendWords({ last, months, trend }: Review['time']): string {
  const pieces = months.reduce((sum, each) => sum + each.pieces, 0);
  if (pieces === 0) return 'Nothing was done and timed on a finished piece yet.';
  if (trend === null)
    return `Too few to tell whether it drifts: ${counted(pieces, 'piece')}, from ${fewestForTrend} on it is said.`;
  const recent =
    last === null || last.ratio === null
      ? ''
      : ` Your last ${last.count} ran ${times(last.ratio)}.`;
  if (trend.direction === 'level')
    return `No drift: ${counted(pieces, 'piece')} come in no order beyond luck.${recent}`;
  const chance = Math.max(1, Math.round(trend.byLuck * 100));
  const towards = trend.direction === 'rising' ? 'slower' : 'faster';
  return `It drifts: you grow ${towards} against the estimate, piece by piece. Luck alone does that ${counted(chance, 'time')} in 100.${recent}`;
}

/** How often the range of whole pieces held. */
export function outcomesWords({ held }: Review['outcomes']): string {
  if (held.of === 0)
    return 'No range to judge yet: nothing was done and timed on a finished piece.';
  const few = held.of < fewPieces ? ' Few pieces yet, a hint at most.' : '';
  return `Whole pieces: ${heldWords(held).replace('The', 'the')}${few}`;
}

/** What hands did, each with its minutes; what was nothing is left out. */
export const spentRows = ({
  working,
  setup,
  about,
  other,
}: WhereHoursWent): readonly { readonly name: string; readonly minutes: number }[] =>
  [
    { name: 'working', minutes: working },
    { name: about ? 'setup, cleanup (about)' : 'setup, cleanup', minutes: setup },
    { name: 'work of no step', minutes: other },
  ].filter(({ minutes }, index) => index < 2 || minutes >= 1);

/** `Waiting on the bench: 41 days over 14 pieces; hands were on them 3 hours in 100.` */
export function waitingWords({ pieces, working, setup, other, waiting }: WhereHoursWent): string {
  if (pieces === 0) return 'No finished piece tells of waiting yet.';
  const hands = working + setup + other;
  const days = (waiting * minute) / day;
  const told = days < 2 ? minutesSpent(Math.round(waiting) * minute) : `${Math.round(days)} days`;
  const all = hands + waiting;
  const share = all > 0 ? (100 * hands) / all : 0;
  const of = share > 0 && share < 1 ? 'less than 1 hour' : counted(Math.round(share), 'hour');
  return `Waiting on the bench: ${told} over ${counted(pieces, 'piece')}; hands were on them ${of} in 100.`;
}
