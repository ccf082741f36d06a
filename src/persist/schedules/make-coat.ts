import type { Chemistry } from '../../tracker/trade/index.ts';
import {
  mayTeachSooner,
  touchTells,
  type Edge,
  type Milestone,
  type StampChoice,
  type WindowRule,
} from '../../tracker/windows/index.ts';
import {
  afterwards,
  going,
  grows,
  optional,
  usualDelay,
  waiting,
  withChecks,
  type Surroundings,
} from './stretches.ts';
import type { Coat, CoatRow } from './window-form.ts';

/** A coat that was never given its first stroke counts from the pick-up. */
const firstStroke: StampChoice = { events: ['first-stroke'], which: 'first', assume: true };
const lastStroke: StampChoice = { events: ['last-stroke'], which: 'last' };
const turned: StampChoice = { events: ['turned'], which: 'last' };

const verbs: Partial<Record<Milestone, string>> = { recoat: 'next coat', 'dust-free': 'dust-free' };
const cures: ReadonlySet<Milestone> = new Set(['light use', 'full cure']);
/** What is waited for like a cure: nobody tries it. */
const waitedOut: ReadonlySet<Milestone> = new Set([...cures, 'wrap']);
const endsByItself: ReadonlySet<Milestone> = new Set(['dust-free', 'light use', 'full cure']);
/** Nothing that can be felt tells when a coat can be wrapped or has cured: there the label's time stands alone. */
const cannotBeTried: ReadonlySet<Milestone> = new Set([
  'dust-free',
  'wrap',
  'light use',
  'full cure',
]);

/**
 * The windows of a coat's milestones, in the order they are written.
 *
 * @param isAcidHardened whether an acid hardens it, however its solvent leaves: then no check opens it sooner
 */
export function makeCoat(
  coat: Coat,
  around: Surroundings,
  isAcidHardened = false,
): readonly WindowRule[] {
  return Object.entries(coat).map(([name, row]) =>
    makeMilestone(name as Milestone, row, around, isAcidHardened),
  );
}

function makeMilestone(
  milestone: Milestone,
  row: CoatRow,
  around: Surroundings,
  isAcidHardened: boolean,
): WindowRule {
  const isTriedByTouch = touchTells(around.chemistry) && !cannotBeTried.has(milestone);
  const law = { ...around, chemistry: lawOf(milestone, around.chemistry) };
  const isLearnable =
    !isAcidHardened && mayTeachSooner(milestone, around.chemistry, row['keep off'] !== undefined);
  const opening: Edge = {
    kind: 'stamp',
    stamp: lastStroke,
    plus: grows(row.opens, law, isLearnable),
  };
  const adds = cannotBeTried.has(milestone)
    ? undefined
    : (row['not yet adds'] ?? usualDelay(row.opens));
  return {
    id: milestone.replaceAll(' ', '-'),
    kind: waitedOut.has(milestone) ? 'cure' : 'coat',
    verb: verbs[milestone] ?? milestone,
    milestone,
    scope: 'pass',
    begins: firstStroke,
    stretches: [
      waiting,
      { from: withChecks(opening, isTriedByTouch, adds), ...going },
      ...afterwards(row, firstStroke, lastStroke, row.closes, law),
    ],
    closedBy: endOf(milestone),
    ...optional({ notYetAdds: adds, gear: row.gear }),
  };
}

/** Once it is turned, nobody waits for "turn over" any more. */
function endOf(milestone: Milestone): WindowRule['closedBy'] {
  if (milestone === 'turn over') return { by: 'stamp', stamp: turned };
  return { by: endsByItself.has(milestone) ? 'nothing' : 'needing step' };
}

/** The last of a waterborne film's water leaves almost whatever the humidity: cure follows temperature, as in oil. */
const lawOf = (milestone: Milestone, chemistry: Chemistry): Chemistry =>
  cures.has(milestone) && chemistry === 'waterborne' ? 'oxidative' : chemistry;
