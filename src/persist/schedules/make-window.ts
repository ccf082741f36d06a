import type { Chemistry, Climate } from '../../tracker/trade/index.ts';
import { hour, minute, type Milliseconds } from '../../tracker/time/index.ts';
import type {
  Edge,
  Milestone,
  Span,
  StampChoice,
  Stretch,
  WindowRule,
} from '../../tracker/windows/index.ts';
import type { Coat, CoatRow, EndedBy, WindowRow } from './window-form.ts';

/** What all windows of one product share. */
export type Surroundings = { readonly chemistry: Chemistry; readonly statedFor: Climate };

/** A window for every wood, or one for each. */
export type WindowsByWood = {
  readonly any: readonly WindowRule[];
  readonly soft: readonly WindowRule[];
  readonly hard: readonly WindowRule[];
};

/** A coat that was never given its first stroke counts from the pick-up. */
const firstStroke: StampChoice = { events: ['first-stroke'], which: 'first', assume: true };
const lastStroke: StampChoice = { events: ['last-stroke'], which: 'last' };

const verbs: Partial<Record<Milestone, string>> = { recoat: 'next coat', 'dust-free': 'dust-free' };
const cures: ReadonlySet<Milestone> = new Set(['light use', 'full cure']);
const endsByItself: ReadonlySet<Milestone> = new Set(['dust-free', 'light use', 'full cure']);
/** Nothing that can be felt tells when a coat can be wrapped or has cured: there the label's time stands alone. */
const cannotBeTried: ReadonlySet<Milestone> = new Set([
  'dust-free',
  'wrap',
  'light use',
  'full cure',
]);
/** Where a finger or paper tells the truth. Two-part coats can feel hard before they are. */
const tellsByTouch: ReadonlySet<Chemistry> = new Set(['waterborne', 'evaporative', 'oxidative']);
/** Checks may teach a shorter time only for work that spoils nothing if it was a little too early. */
const learned: ReadonlySet<Milestone> = new Set(['scuff', 'recoat']);

/** The windows of a coat's milestones, in the order they are written. */
export function makeCoat(coat: Coat, around: Surroundings): readonly WindowRule[] {
  return Object.entries(coat).map(([name, row]) => makeMilestone(name as Milestone, row, around));
}

function makeMilestone(milestone: Milestone, row: CoatRow, around: Surroundings): WindowRule {
  const touch = tellsByTouch.has(around.chemistry) && !cannotBeTried.has(milestone);
  const law = { ...around, chemistry: lawOf(milestone, around.chemistry) };
  const learnable = learned.has(milestone) && touch && row['keep off'] === undefined;
  const opening: Edge = {
    kind: 'stamp',
    stamp: lastStroke,
    plus: grows(row.opens, law, learnable),
  };
  const adds = cannotBeTried.has(milestone)
    ? undefined
    : (row['not yet adds'] ?? usualDelay(row.opens));
  return {
    id: milestone.replaceAll(' ', '-'),
    kind: cures.has(milestone) ? 'cure' : 'coat',
    verb: verbs[milestone] ?? milestone,
    milestone,
    scope: 'pass',
    begins: firstStroke,
    stretches: [
      waiting,
      { from: withChecks(opening, touch, adds), ...going },
      ...afterwards(row, firstStroke, lastStroke, row.closes, law),
    ],
    closedBy: { by: endsByItself.has(milestone) ? 'nothing' : 'needing step' },
    ...optional({ notYetAdds: adds, gear: row.gear }),
  };
}

/** The last of a waterborne film's water leaves almost whatever the humidity: cure follows temperature, as in oil. */
const lawOf = (milestone: Milestone, chemistry: Chemistry): Chemistry =>
  cures.has(milestone) && chemistry === 'waterborne' ? 'oxidative' : chemistry;

/** A window with its own stamps; one for each wood where its times differ by wood. */
export function makeWindow(id: string, row: WindowRow, around: Surroundings): WindowsByWood {
  const { opens, closes } = row;
  const differs = typeof opens === 'object' || typeof closes === 'object';
  const forWood = (wood: 'soft' | 'hard'): WindowRule =>
    ruleOf(id, row, of(opens, wood), of(closes, wood), around);
  if (differs) return { any: [], soft: [forWood('soft')], hard: [forWood('hard')] };
  return { any: [forWood('hard')], soft: [], hard: [] };
}

type ByWood = Milliseconds | { readonly soft: Milliseconds; readonly hard: Milliseconds };
const of = (time: ByWood | undefined, wood: 'soft' | 'hard'): Milliseconds | undefined =>
  typeof time === 'object' ? time[wood] : time;

function ruleOf(
  id: string,
  row: WindowRow,
  opens: Milliseconds | undefined,
  closes: Milliseconds | undefined,
  around: Surroundings,
): WindowRule {
  const isCoat = row.kind === 'coat' || row.kind === 'cure';
  const start: StampChoice = { ...row['starts at'], ...(isCoat ? { assume: true } : {}) };
  const opensFrom = row['opens from'] ?? start;
  const closesFrom = row['closes from'] ?? start;
  const tried = row['can be tried'] === true;
  const adds = tried ? (row['not yet adds'] ?? usualDelay(opens ?? 0)) : row['not yet adds'];
  const openAs = { ...around, chemistry: row['opens as'] ?? around.chemistry };
  const closeAs = { ...around, chemistry: row['closes as'] ?? around.chemistry };
  const opened: readonly Stretch[] =
    opens === undefined
      ? [going]
      : [
          waiting,
          {
            from: withChecks(
              { kind: 'stamp', stamp: opensFrom, plus: grows(opens, openAs, false) },
              tried,
              adds,
            ),
            ...going,
          },
        ];
  return {
    id,
    kind: row.kind,
    verb: row.do,
    // A second round or pass within a step begins its windows anew.
    scope: row.per ?? 'pass',
    begins: start,
    stretches: [...opened, ...afterwards(row, closesFrom, opensFrom, closes, closeAs)],
    closedBy: endOf(row['ended by']),
    ...optional({ milestone: row.milestone, notYetAdds: adds, gear: row.gear }),
  };
}

const endOf = (ending: EndedBy): WindowRule['closedBy'] =>
  ending.by === 'stamp' ? { by: 'stamp', stamp: ending.phrase } : { by: ending.by };

const waiting: Stretch = { meaning: 'wait', loss: 'costs nothing' };
const going = { meaning: 'go', loss: 'costs nothing' } as const satisfies Stretch;

/** What comes after "go": nothing, a closing with its loss, or a forbidden gap and the time after it. */
function afterwards(
  row: Pick<CoatRow, 'keep off' | 'then' | 'loss'>,
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
      from: { kind: 'stamp', stamp: from, plus: shrinks(closes, around) },
      meaning: loss === 'costs work' ? 'go after work' : 'late',
      loss,
      ...optional({ says: row.then }),
    },
  ];
}

/** The label's opening; a finding of ready opens it at once, and one of "not yet" keeps it closed a while longer. */
function withChecks(label: Edge, tried: boolean, adds: Milliseconds | undefined): Edge {
  const opening: Edge = tried
    ? { kind: 'earliest', of: [label, { kind: 'check', finding: 'ready' }] }
    : label;
  if (adds === undefined) return opening;
  return {
    kind: 'latest',
    of: [opening, { kind: 'check', finding: 'not yet', plus: { ms: adds } }],
  };
}

/** A quarter of the wait again, from 5 minutes to 12 hours (common practice, no source). */
const usualDelay = (opens: Milliseconds): Milliseconds => {
  const steps = Math.round(opens / 4 / (5 * minute));
  return Math.min(12 * hour, Math.max(1, steps) * 5 * minute);
};

const grows = (ms: Milliseconds, around: Surroundings, learnable: boolean): Span => ({
  ...moved(ms, around, 'grow'),
  ...(learnable ? { learnable } : {}),
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
function optional<const Fields extends Record<string, unknown>>(fields: Fields): Present<Fields> {
  return Object.fromEntries(
    Object.entries(fields).filter(([, value]) => value !== undefined),
  ) as Present<Fields>;
}
