import type { BenchFact, Target } from './facts.ts';
import { checkSays } from './check-says.ts';
import type { Bench } from './bench.ts';
import type { Piece } from './piece.ts';
import { potCalled } from './pot-window.ts';
import { stampSays } from './progress.ts';

/** What a group of facts did, in a few words: `first stroke on, coat 2 on 3 Beech stool`. Also for groups that were taken back. */
export function nameGroup(bench: Bench, facts: readonly BenchFact[]): string {
  const telling = facts.reduce<BenchFact | null>(
    // What a key press did last is what it was pressed for: a section taken off, the next one put on.
    (best, fact) => (best === null || weight(fact) <= weight(best) ? fact : best),
    null,
  );
  return telling === null ? 'nothing' : nameFact(bench, telling);
}

/** Of several facts of one key press, the one that it was pressed for. */
const weight = ({ kind }: BenchFact): number => {
  if (kind === 'put-down') return 3;
  if (kind === 'trial-waived' || kind === 'step-skipped') return 3;
  // With "done" it is the lesser part; alone it names itself.
  if (kind === 'coat-weighed') return 2;
  return kind === 'picked-up' || kind === 'piece-described' || kind === 'step-inserted' ? 2 : 1;
};

function nameFact(bench: Bench, fact: BenchFact): string {
  const find = (id: string): Piece | undefined => bench.pieces.get(id);
  const called = (id: string): string => {
    const piece = find(id);
    if (piece === undefined) return addedName(bench, id);
    return piece.number === null ? piece.name : `${piece.number} ${piece.name}`;
  };
  const calledOn = (id: string, part: string | null): string =>
    [
      called(id),
      ...(find(id)?.parts.filter((each) => each.id === part) ?? []).map(({ name }) => name),
    ].join(', ');
  const stepName = (piece: string, step: string | null): string =>
    find(piece)?.steps.find((each) => each.id === step)?.name ?? 'work';
  const targets = (list: readonly Target[]): string =>
    list
      .map((target) => `${stepName(target.piece, target.step)} on ${called(target.piece)}`)
      .join(', ');
  const pickedUpName = (list: readonly Target[]): string =>
    list
      .map(
        ({ piece, part, step }) =>
          `${calledOn(piece, part)}, ${step === null ? 'other work' : stepName(piece, step)}`,
      )
      .join(' and ');
  switch (fact.kind) {
    case 'piece-added':
      return `add ${fact.body.number} ${fact.body.name}`;
    case 'piece-described':
      return `what was noted about ${called(fact.body.piece)}`;
    case 'parts-named':
      return `parts of ${called(fact.body.piece)}`;
    case 'step-inserted':
      return `${fact.body.step.name} put into ${called(fact.body.piece)}`;
    case 'step-moved':
      return `order of ${stepName(fact.body.piece, fact.body.step)} on ${called(fact.body.piece)}`;
    case 'step-skipped':
      return `${fact.body.skipped ? 'skip' : 'put back'} ${stepName(fact.body.piece, fact.body.step)} on ${called(fact.body.piece)}`;
    case 'step-reworded':
      return `reword to ${fact.body.name} on ${called(fact.body.piece)}`;
    case 'question-answered': {
      const { piece, step, answer } = fact.body;
      const asked = find(piece)?.steps.find(({ id }) => id === step)?.asks;
      const says = asked?.answers.find(({ id }) => id === answer)?.says ?? answer ?? 'no answer';
      return `answer "${says}" on ${called(piece)}`;
    }
    case 'trial-waived':
      return `${stepName(fact.body.piece, fact.body.step)} without its trial on ${called(fact.body.piece)}`;
    case 'product-chosen':
      return `${fact.body.product.name} for ${stepName(fact.body.piece, fact.body.step)} on ${called(fact.body.piece)}`;
    case 'hold-placed':
      return `hold on ${called(fact.body.piece)}`;
    case 'hold-lifted':
      return `lift hold on ${called(fact.body.piece)}`;
    case 'carried-in':
      return `${called(fact.body.piece)} carried in`;
    case 'piece-left-bench':
      return `${called(fact.body.piece)} off the bench`;
    case 'piece-put-back':
      return `${fact.body.number} ${find(fact.body.piece)?.name ?? 'a piece'} back on the bench`;
    case 'piece-removed':
      return `remove ${called(fact.body.piece)}`;
    case 'match-told': {
      const { piece, partner, matches } = fact.body;
      return `${called(partner)} ${matches ? 'matches' : 'no longer matches'} ${called(piece)}`;
    }
    case 'kept-from-learning':
      return `${fact.body.kept ? 'leave' : 'take'} ${called(fact.body.piece)} ${fact.body.kept ? 'out of' : 'into'} learning`;
    case 'note-written':
      return `note on ${called(fact.body.piece)}`;
    case 'picked-up':
      return `pick up ${pickedUpName(fact.body.targets)}`;
    case 'put-down':
      return `put down ${putDownName(bench, fact.body.session, called)}`;
    case 'targets-changed':
      return `in hand: ${targets(fact.body.targets)}`;
    case 'stamped': {
      const step = find(fact.body.piece)?.steps.find(({ id }) => id === fact.body.step);
      const what = step === undefined ? fact.body.event : stampSays(step, fact.body);
      return `${what}, ${step?.name ?? 'work'} on ${calledOn(fact.body.piece, fact.body.part)}`;
    }
    case 'step-done':
      return `${stepName(fact.body.piece, fact.body.step)} done on ${calledOn(fact.body.piece, fact.body.part)}`;
    case 'checked':
      return `${checkSays(find(fact.body.piece), fact.body)} on ${calledOn(fact.body.piece, fact.body.part)}`;
    case 'coat-weighed':
      return `${fact.body.weight} coat, ${stepName(fact.body.piece, fact.body.step)} on ${called(fact.body.piece)}`;
    case 'lateness-explained':
      return `late for ${fact.body.cause} on ${called(fact.body.piece)}`;
    case 'moisture-read':
      return `moisture of ${called(fact.body.piece)}`;
    case 'timer-started':
      return `timer ${fact.body.label}`;
    case 'timer-closed':
      return `close timer ${bench.timers.find((timer) => timer.id === fact.body.timer)?.label ?? ''}`.trim();
    case 'pot-mixed':
      return `pot ${fact.body.letter} mixed, ${fact.body.product.productClass}`;
    case 'pot-washed': {
      const pot = bench.pots.find(({ id }) => id === fact.body.pot);
      return `${pot === undefined ? 'a pot' : potCalled(pot)}, washed out`;
    }
    case 'stamp-moved':
      return `moved stamp: ${movedName(bench, fact.body.fact)}`;
    case 'session-corrected':
      return `correction of ${targets(fact.body.targets)}`;
    case 'shop-shut':
      return 'shut up shop';
    case 'rags-dealt-with':
      return 'rags dealt with';
    case 'hours-imported':
      return `hours from ${fact.body.file}`;
    case 'import-taken-out':
      return 'imported hours taken out';
    case 'clock-stepped':
      return 'clock set';
    case 'group-withdrawn':
      return 'take back';
    case 'group-restored':
      return 'bring back';
  }
}

/** A piece whose adding was taken back is not on the bench; its name is in what was told. */
function addedName(bench: Bench, id: string): string {
  for (const facts of bench.groups.values()) {
    for (const fact of facts)
      if (fact.kind === 'piece-added' && fact.body.piece === id) return fact.body.name;
  }
  return 'a piece';
}

function putDownName(bench: Bench, session: string, called: (piece: string) => string): string {
  const found = bench.sessions.find((each) => each.id === session);
  if (found === undefined) return 'work';
  return [...new Set(found.targets.map(({ piece }) => piece))].map(called).join(' and ');
}

function movedName(bench: Bench, id: string): string {
  for (const facts of bench.groups.values()) {
    const fact = facts.find((each) => each.id === id);
    if (fact !== undefined) return nameFact(bench, fact);
  }
  return 'a stamp';
}

/** What taking back would undo, and what bringing back would restore; null where there is nothing. */
export const takeBackName = (bench: Bench): string | null =>
  groupName(bench, bench.trail.done.at(-1));
/** The same of what would be brought back. */
export const bringBackName = (bench: Bench): string | null =>
  groupName(bench, bench.trail.takenBack.at(-1));

const groupName = (bench: Bench, group: string | undefined): string | null =>
  group === undefined ? null : nameGroup(bench, bench.groups.get(group) ?? []);
