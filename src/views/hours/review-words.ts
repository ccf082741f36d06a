import { fewestForTrend, type Review, type WhereHoursWent } from '../../tracker/review/index.ts';
import { day, minute } from '../../tracker/time/index.ts';
import { minutesSpent, times } from '../format/index.ts';
import { fewPieces, heldWords } from './furthest-off.ts';

export const nothingTimed = 'Nothing was done and timed on a finished piece yet.';

const counted = (count: number, unit: string): string =>
  `${count} ${unit}${count === 1 ? '' : 's'}`;

/** `strip: 3 h 10 over estimate on 8 pieces, mostly on Cane rocker`; of one piece `strip: 35 min over estimate on Oak chest` */
export function costlyWords({
  stepClass,
  over,
  pieces,
  mostly,
}: Review['costliest'][number]): string {
  const most = mostly === null ? '' : `, mostly on ${mostly.name}`;
  const on = pieces === 1 && mostly !== null ? mostly.name : counted(pieces, 'piece') + most;
  const few = pieces < fewPieces ? '; few pieces yet' : '';
  return `${stepClass}: ${minutesSpent(Math.round(over) * minute)} over estimate on ${on}${few}`;
}

/** Whether the minutes drift against the estimates, or why nothing is said. */
export function trendWords({ last, months, trend }: Review['time']): string {
  const pieces = months.reduce((sum, each) => sum + each.pieces, 0);
  if (pieces === 0) return nothingTimed;
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
export function outcomesWords({ held }: Review['outcomes'], imported: number): string {
  if (held.of === 0) return heldWords(held, imported);
  const few = held.of < fewPieces ? ' Few pieces yet, a hint at most.' : '';
  return `Whole pieces: ${heldWords(held, imported).replace('The', 'the')}${few}`;
}

/** What hands did, each with its minutes; what was nothing is left out, and all of it where no piece tells of it. */
export const spentRows = (
  { pieces, working, setup, about, other }: WhereHoursWent,
  isNarrow: boolean,
): readonly { readonly name: string; readonly minutes: number }[] =>
  pieces === 0
    ? []
    : [
        { name: 'working', minutes: working },
        { name: setupCalled(about, isNarrow), minutes: setup },
        { name: isNarrow ? 'other work' : 'other work, of no step', minutes: other },
      ].filter(({ minutes }, index) => index < 2 || minutes >= 1);

function setupCalled(isAbout: boolean, isNarrow: boolean): string {
  if (isAbout && isNarrow) return 'setup (about)';
  return isAbout ? 'setup, cleanup (about)' : 'setup, cleanup';
}

/** `Waiting on the bench: 41 days over 14 pieces; hands were on them 3 hours in 100.` */
export function waitingWords(
  { pieces, working, setup, other, waiting }: WhereHoursWent,
  imported: number,
): string {
  if (pieces === 0)
    return imported === 0
      ? nothingTimed
      : 'Imported hours tell neither setup nor waiting apart, and no piece of the bench is finished yet.';
  const hands = working + setup + other;
  const days = (waiting * minute) / day;
  const told = days < 2 ? minutesSpent(Math.round(waiting) * minute) : `${Math.round(days)} days`;
  const all = hands + waiting;
  const share = all > 0 ? (100 * hands) / all : 0;
  const of = share > 0 && share < 1 ? 'less than 1 hour' : counted(Math.round(share), 'hour');
  return `Waiting on the bench: ${told} over ${counted(pieces, 'piece')}; hands were on ${pieces === 1 ? 'it' : 'them'} ${of} in 100.${imported === 0 ? '' : ' Imported hours are left out: they tell neither setup nor waiting apart.'}`;
}
