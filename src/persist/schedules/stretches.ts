import type { Chemistry, Climate } from '../../tracker/trade/index.ts';
import { hour, minute, type Milliseconds } from '../../tracker/time/index.ts';
import type { Edge, Span, StampChoice, Stretch } from '../../tracker/windows/index.ts';
import type { CoatRow } from './window-form.ts';

/** What all windows of one product share. */
export type Surroundings = { readonly chemistry: Chemistry; readonly statedFor: Climate };

export const waiting: Stretch = { meaning: 'wait', loss: 'costs nothing' };
export const going = { meaning: 'go', loss: 'costs nothing' } as const satisfies Stretch;

/** What comes after "go": nothing, a closing with its loss, or a forbidden gap and the time after it. */
export function afterwards(
  row: Pick<CoatRow, 'keep off' | 'then' | 'loss'> & {
    readonly 'closes covered'?: Milliseconds | undefined;
  },
  from: StampChoice,
  gapEndsFrom: StampChoice,
  closes: Milliseconds | undefined,
  around: Surroundings,
): readonly Stretch[] {
  const gap = row['keep off'];
  if (gap !== undefined) {
    const begins: Edge = { kind: 'stamp', stamp: from, plus: shrinks(gap.from, around) };
    const ends: Edge = { kind: 'stamp', stamp: gapEndsFrom, plus: grows(gap.until, around, false) };
    return [
      { from: begins, meaning: 'keep off', loss: row.loss ?? 'costs work', says: gap.because },
      { from: ends, ...going },
    ];
  }
  if (closes === undefined) return [];
  const loss = row.loss ?? 'costs work';
  return [
    {
      from: closing(from, shrinks(closes, around), row['closes covered']),
      meaning: loss === 'costs work' ? 'go after work' : 'late',
      loss,
      ...optional({ says: row.then }),
    },
  ];
}

/** Under film nothing evaporates, whatever the air: from the covering on the label's time counts, until it is uncovered. */
function closing(from: StampChoice, plus: Span, covered: Milliseconds | undefined): Edge {
  const open: Edge = { kind: 'stamp', stamp: from, plus };
  if (covered === undefined) return open;
  const film: StampChoice = { events: ['covered'], which: 'last', until: ['uncovered'] };
  return {
    kind: 'latest',
    of: [open, { kind: 'stamp', stamp: film, plus: { ms: covered, may: 'shrink' } }],
  };
}

/** The label's opening; a finding of ready opens it at once, and one of "not yet" keeps it closed a while longer. */
export function withChecks(label: Edge, isTried: boolean, adds: Milliseconds | undefined): Edge {
  const opening: Edge = isTried
    ? { kind: 'earliest', of: [label, { kind: 'check', finding: 'ready' }] }
    : label;
  if (adds === undefined) return opening;
  return {
    kind: 'latest',
    of: [opening, { kind: 'check', finding: 'not yet', plus: { ms: adds } }],
  };
}

/** A quarter of the wait again, from 5 minutes to 12 hours (common practice, no source). */
export const usualDelay = (opens: Milliseconds): Milliseconds => {
  const steps = Math.round(opens / 4 / (5 * minute));
  return Math.min(12 * hour, Math.max(1, steps) * 5 * minute);
};

export const grows = (ms: Milliseconds, around: Surroundings, isLearnable: boolean): Span => ({
  ...moved(ms, around, 'grow'),
  ...(isLearnable ? { learnable: isLearnable } : {}),
});
const shrinks = (ms: Milliseconds, around: Surroundings): Span => moved(ms, around, 'shrink');

/** The times of a reaction are the label's alone: the shop's air does not move them. */
function moved(
  ms: Milliseconds,
  { chemistry, statedFor }: Surroundings,
  may: 'grow' | 'shrink',
): Span {
  return chemistry === 'reaction' ? { ms, chemistry } : { ms, statedFor, chemistry, may };
}

type Present<Fields> = { [Name in keyof Fields]?: Exclude<Fields[Name], undefined> };

/** Leaves out fields that have no value. */
export function optional<const Fields extends Record<string, unknown>>(
  fields: Fields,
): Present<Fields> {
  return Object.fromEntries(
    Object.entries(fields).filter(([, value]) => value !== undefined),
  ) as Present<Fields>;
}
