import { minute, second, type Instant, type Milliseconds } from '../../time/index.ts';
import type { BenchFact, NewBenchFact } from '../facts.ts';
import type { Intent, IntentContext } from '../intents.ts';
import { nameGroup } from '../name-group.ts';
import { accept, refuse, type Outcome } from '../outcome.ts';
import type { Bench, Session } from '../bench.ts';
import type { Piece } from '../piece.ts';
import { rulesOf } from '../piece-windows.ts';
import { called, isOutcome, onBench } from './context.ts';

/** One press moves a coat's stamp by five minutes, a dwell's or a session's by one. */
const coatShift: Milliseconds = 5 * minute;
const otherShift: Milliseconds = minute;

/** Earlier, later: moves what the last key press recorded on the piece, never past its neighbour or now. */
export function moveLastStamp(
  bench: Bench,
  intent: Extract<Intent, { do: 'move stamp' }>,
  context: IntentContext,
): Outcome {
  const piece = onBench(bench, intent.piece, 'Not moved');
  if (isOutcome(piece)) return piece;
  const moving = lastTimedFacts(bench, piece.id);
  if (moving.length === 0) return refuse(`Not moved: nothing was stamped on ${called(piece)}.`);
  if (intent.ms !== undefined && !(intent.ms > 0))
    return refuse('Not moved: give a length of time, such as 5 min.');
  const from = Math.max(...moving.map((fact) => instantNow(bench, fact)));
  const shift = intent.ms ?? (movesCoat(piece, moving) ? coatShift : otherShift);
  const limits = neighbours(bench, piece, moving, from, context.now);
  const wanted = intent.earlier ? from - shift : from + shift;
  const to = Math.min(Math.max(wanted, limits.after), limits.before);
  // After the clock was set back, now itself can lie before what came before.
  if (to < limits.after || (intent.earlier ? to >= from : to <= from)) {
    return refuse(
      intent.earlier
        ? `Not moved: what came before it on ${called(piece)} was at the same time.`
        : `Not moved: later than this would be past ${from >= context.now ? 'now' : 'what came after it'}.`,
    );
  }
  return accept(
    moving.map((fact): NewBenchFact => ({ kind: 'stamp-moved', body: { fact: fact.id, to } })),
    `${nameGroup(bench, moving)} ${lengthOf(to - from)} ${to < from ? 'earlier' : 'later'}${to === wanted ? '' : ', as far as it goes'}`,
    piece.id,
  );
}

/** Held by a neighbour it may move by less than a minute, which is not nothing. */
function lengthOf(moved: Milliseconds): string {
  const by = Math.abs(moved);
  return by < minute ? `${Math.ceil(by / second)} s` : `${Math.round(by / minute)} min`;
}

const timedKinds = new Set<BenchFact['kind']>([
  'stamped',
  'step-done',
  'checked',
  'picked-up',
  'put-down',
  'timer-started',
  'pot-mixed',
  'pot-washed',
]);

/**
 * What the last key press on this piece put at an instant. Where that press was for another piece and only put this one
 * down, the putting down alone: nobody means the other piece's stroke.
 */
function lastTimedFacts(bench: Bench, piece: string): readonly BenchFact[] {
  for (const id of bench.trail.done.toReversed()) {
    const facts = (bench.groups.get(id) ?? []).filter((fact) => timedKinds.has(fact.kind));
    const own = facts.filter((fact) => isAbout(bench, fact, piece));
    if (own.length > 0) return own.every((fact) => fact.kind === 'put-down') ? own : facts;
  }
  return [];
}

const isAbout = (bench: Bench, fact: BenchFact, piece: string): boolean => {
  switch (fact.kind) {
    case 'stamped':
    case 'step-done':
    case 'checked':
    case 'timer-started':
      return fact.body.piece === piece;
    case 'picked-up':
    case 'put-down':
      return sessionOf(bench, fact)?.targets.some((target) => target.piece === piece) ?? false;
    default:
      return false;
  }
};

const sessionOf = (bench: Bench, fact: BenchFact): Session | undefined =>
  bench.sessions.find((session) => session.startFact === fact.id || session.endFact === fact.id);

/** Where a fact stands after earlier moves. */
function instantNow(bench: Bench, fact: BenchFact): Instant {
  const session = sessionOf(bench, fact);
  if (session?.startFact === fact.id) return session.start;
  if (session?.endFact === fact.id) return session.end ?? fact.at;
  for (const piece of bench.pieces.values()) {
    const record = [...piece.stamps, ...piece.finishes, ...piece.checks].find(
      (each) => each.fact === fact.id,
    );
    if (record) return record.at;
  }
  const pot = bench.pots.find((each) => each.fact === fact.id || each.washedFact === fact.id);
  if (pot !== undefined) return pot.fact === fact.id ? pot.mixedAt : (pot.washedAt ?? fact.at);
  return bench.timers.find((timer) => timer.fact === fact.id)?.start ?? fact.at;
}

/** Whether a stamp belongs to a coat's long waits, and neither begins nor ends a dwell, glue or pot that is counted in minutes. */
function movesCoat(piece: Piece, facts: readonly BenchFact[]): boolean {
  const stamp = facts.find((fact) => fact.kind === 'stamped' || fact.kind === 'step-done');
  if (stamp === undefined || (stamp.kind !== 'stamped' && stamp.kind !== 'step-done')) return false;
  const step = piece.steps.find((each) => each.id === stamp.body.step);
  const rules = step === undefined ? [] : rulesOf(piece, step);
  const isOfDwell = rules
    .filter(({ kind }) => kind === 'chemical' || kind === 'glue' || kind === 'pot')
    .flatMap(({ begins, closedBy }) => [
      begins,
      ...(closedBy.by === 'stamp' ? [closedBy.stamp] : []),
    ])
    .some(
      ({ events, agent }) =>
        stamp.kind === 'stamped' &&
        events.includes(stamp.body.event) &&
        (agent === undefined || agent === stamp.body.agent),
    );
  return !isOfDwell && rules.some((rule) => rule.kind === 'coat');
}

/**
 * The instants between which the moved facts must stay: the events beside them on the piece and in the sessions they
 * touch, and now. Of what happened at the same instant, the order of telling decides what came before.
 */
function neighbours(
  bench: Bench,
  piece: Piece,
  moving: readonly BenchFact[],
  from: Instant,
  now: Instant,
): { readonly after: Instant; readonly before: Instant } {
  const moved = new Set(moving.map((fact) => fact.id));
  const told = new Map([...bench.groups.values()].flat().map((fact, place) => [fact.id, place]));
  const place = Math.max(...moving.map((fact) => told.get(fact.id) ?? 0));
  let after = piece.addedAt;
  let before = now;
  const keepBeside = (fact: string | null, at: Instant): void => {
    if (fact !== null && moved.has(fact)) return;
    // What a correction set, or a script told, has no place among the presses: it stays on both sides.
    const otherPlace = fact === null ? undefined : told.get(fact);
    const isTie = at === from;
    if (at < from || (isTie && (otherPlace ?? place) <= place)) after = Math.max(after, at);
    if (at > from || (isTie && (otherPlace ?? place) >= place)) before = Math.min(before, at);
  };
  for (const { fact, at } of [...piece.stamps, ...piece.finishes, ...piece.checks])
    keepBeside(fact, at);
  const touched = moving
    .map((fact) => sessionOf(bench, fact))
    .filter((session) => session !== undefined);
  for (const session of bench.sessions) {
    const isNear =
      touched.some((each) => each.hand === session.hand) ||
      session.targets.some((each) => each.piece === piece.id);
    if (session.dropped || !isNear) continue;
    keepBeside(session.startFact, session.start);
    if (session.end !== null) keepBeside(session.endFact, session.end);
  }
  return { after, before };
}
