import {
  passCalled,
  type Air,
  type CardCorrection,
  type CardOutcome,
  type CheckRow,
  type HoldRow,
  type JobCardRow,
  type MoistureRow,
  type PlanRow,
  type StepRow,
} from '../../tracker/bench/index.ts';
import type { Instant, Milliseconds } from '../../tracker/time/index.ts';
import {
  air,
  dayWords,
  minutesSpent,
  moisturePercent,
  shopDay,
  shortDay,
} from '../format/index.ts';
import type { Shop } from '../port.ts';
import { keptTogether } from './kept-together.ts';
import { momentOn } from './moment-on.ts';
import { stampWords } from './stamp-words.ts';

/** What a row of the card says, beside its time and minutes. */
export type RowTold = { readonly name: string; readonly minutes: string; readonly what: string };

export function tellRow(row: JobCardRow, shop: Shop): RowTold {
  switch (row.row) {
    case 'step':
      return {
        name: row.name,
        minutes: row.minutes === null ? '-' : String(Math.round(row.minutes)),
        what: stepWords(row, shop),
      };
    case 'check':
      return { name: 'check', minutes: '-', what: checkWords(row, shop) };
    case 'moisture':
      return { name: 'moisture', minutes: '-', what: readingWords(row, shop) };
    case 'note':
      return {
        name: 'note',
        minutes: '',
        what: row.step === null ? row.text : `${row.step}: ${row.text}`,
      };
    case 'hold':
      return { name: 'hold', minutes: '', what: holdWords(row, shop) };
    case 'plan':
      return { name: planNames[row.change], minutes: '', what: row.name ?? '' };
    case 'timer': {
      const { label, ms, closedAt } = row.timer;
      const closed = closedAt === null ? '' : `; closed ${momentOn(closedAt, row.at, shop)}`;
      return { name: 'timer', minutes: '', what: `${label}, ${lengthWords(ms)}${closed}` };
    }
  }
}

const planNames: Readonly<Record<PlanRow['change'], string>> = {
  'put in': 'step put in',
  skipped: 'step skipped',
  'not skipped': 'step not skipped',
  reworded: 'step reworded',
  answered: 'answer',
  'without trial': 'without a trial',
  'left the bench': 'left the bench',
  'put back': 'back on the bench',
  removed: 'removed',
};

const airWords = (read: Air, { temperature }: Shop): string => keptTogether(air(read, temperature));
const lengthWords = (ms: Milliseconds): string => keptTogether(minutesSpent(ms));

/** The air matters to what is put on; sanding is the same in any. */
const putsOn = ({ product, stamps }: StepRow): boolean =>
  product !== null || stamps.some(({ event }) => event !== 'done');

function stepWords(row: StepRow, shop: Shop): string {
  return [
    row.product ?? '',
    ...row.weights.map((each) => weightWords(each, row)),
    stampWords(row, shop),
    ...outcomeWords(row, shop),
    row.air === null || !putsOn(row) ? '' : airWords(row.air, shop),
    row.sessions > 1 ? `${row.sessions} sessions` : '',
    ...row.corrections.map((correction) => correctionWords(correction, shop)),
    row.done || row.step === null ? '' : 'not done',
  ]
    .filter((words) => words !== '')
    .join('; ');
}

/** `heavy coat`; where several were told, `coat 2 of 3, top: heavy coat`. */
function weightWords(
  { pass, part, weight }: StepRow['weights'][number],
  { weights, planned }: StepRow,
): string {
  const called = planned === null ? `pass ${pass}` : passCalled(planned, pass);
  const which = [...(weights.length > 1 ? [called] : []), ...(part === null ? [] : [part])];
  return `${which.length === 0 ? '' : `${which.join(', ')}: `}${keptTogether(`${weight} coat`)}`;
}

/** Chemicals, glue and pots tell how they were met; a coat only what was not as it should be. */
function outcomeWords({ outcomes, at }: StepRow, shop: Shop): readonly string[] {
  const told = outcomes
    .filter(({ kind, outcome }) => outcome !== 'in time' || !['coat', 'cure'].includes(kind))
    .map((outcome) => oneOutcome(outcome, at, shop));
  const counts = new Map<string, { readonly words: string; readonly times: number }>();
  for (const { key, words } of told)
    counts.set(key, {
      words: counts.get(key)?.words ?? words,
      times: (counts.get(key)?.times ?? 0) + 1,
    });
  return [...counts].map(([key, { words, times }]) =>
    times === 1 ? words : `${key}, ${times} times`,
  );
}

/** `key` is alike for outcomes that are told together, as for the sections of one coat. */
function oneOutcome(
  { verb, outcome, after, opened, says, part }: CardOutcome,
  at: Instant,
  shop: Shop,
): { readonly key: string; readonly words: string } {
  const what = part === null ? verb : `${part}: ${verb}`;
  const spent = `after ${lengthWords(after)}`;
  switch (outcome) {
    case 'in time':
      return { key: `${what} in time`, words: `${what} in time, ${spent}` };
    case 'early': {
      const opening = opened === null ? '' : `; it opened ${momentOn(opened, at, shop)}`;
      return { key: `${what} early`, words: `${what} early, ${spent}${opening}` };
    }
    case 'late':
      return {
        key: `${what} late`,
        words: `${what} late, ${spent}${says === null ? '' : `: ${says}`}`,
      };
    case 'kept off':
      return { key: `${what} in the time to keep off`, words: `${what} in the time to keep off` };
  }
}

function correctionWords(
  { change, told, was, start, minutes, other }: CardCorrection,
  shop: Shop,
): string {
  const on = told === null ? '' : ` ${shortDay(shopDay(told, shop.zone))}`;
  const length = was === null ? '' : ` of ${Math.round(was)} min`;
  switch (change) {
    case 'changed':
      return was === null || Math.round(was) === Math.round(minutes)
        ? `session corrected${on}: first began ${momentOn(start, start, shop)}`
        : `session corrected${on}: was ${Math.round(was)}`;
    case 'dropped':
      return `session${length} dropped${on}`;
    case 'moved here':
      return `session${length} moved here${on}${other === null ? '' : ` from ${other}`}`;
    case 'moved away':
      return `session${length} moved away${on}${other === null ? '' : ` to ${other}`}`;
  }
}

const checkWords = (row: CheckRow, shop: Shop): string =>
  [
    [row.part, row.step].filter((name) => name !== null).join(', '),
    row.shown === null ? row.finding : `${row.finding}: ${row.shown}`,
    row.why === null ? '' : `late for ${row.why}`,
    row.afterStroke === null ? '' : `${lengthWords(row.afterStroke)} after last stroke`,
    row.air === null ? '' : airWords(row.air, shop),
    row.movedFrom === null ? '' : `first recorded ${momentOn(row.movedFrom, row.at, shop)}`,
  ]
    .filter((words) => words !== '')
    .join('; ');

const readingWords = ({ part, step, spot, percent, air: read }: MoistureRow, shop: Shop): string =>
  [
    [part, step].filter((name) => name !== null).join(', '),
    `${spot} ${keptTogether(moisturePercent(percent))}`,
    read === null ? '' : airWords(read, shop),
  ]
    .filter((words) => words !== '')
    .join('; ');

const holdWords = ({ reason, askAgain, liftedAt, at }: HoldRow, shop: Shop): string =>
  [
    reason,
    askAgain === null || liftedAt !== null ? '' : `ask ${dayWords(askAgain)}`,
    liftedAt === null ? '' : `lifted ${momentOn(liftedAt, at, shop)}`,
  ]
    .filter((words) => words !== '')
    .join('; ');
