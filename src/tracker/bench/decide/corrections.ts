import { minute, type Instant, type Milliseconds } from '../../time/index.ts';
import type { BenchFact, NewBenchFact, Target } from '../facts.ts';
import type { Intent, IntentContext } from '../intents.ts';
import { nameGroup } from '../name-group.ts';
import { accept, refuse, type Outcome } from '../outcome.ts';
import type { Bench, Piece, Session } from '../piece.ts';
import { rulesOf } from '../piece-windows.ts';
import { anywhere, called, factAt, isOutcome, onBench, stepOf, wrongPart } from './context.ts';
import { targetsCalled } from './hands.ts';

type Asked<Do extends Intent['do']> = Extract<Intent, { do: Do }>;

/** One press moves a coat's stamp by five minutes, a dwell's or a session's by one. */
const coatShift: Milliseconds = 5 * minute;
const otherShift: Milliseconds = minute;

/** Earlier, later: moves what the last key press recorded on the piece, never past its neighbour or now. */
export function moveLastStamp(
  bench: Bench,
  intent: Asked<'move stamp'>,
  context: IntentContext,
): Outcome {
  const piece = onBench(bench, intent.piece, 'Not moved');
  if (isOutcome(piece)) return piece;
  const group = lastTimedGroup(bench, piece.id);
  if (group === null) return refuse(`Not moved: nothing was stamped on ${called(piece)}.`);
  if (intent.ms !== undefined && !(intent.ms > 0))
    return refuse('Not moved: give a length of time, such as 5 min.');
  const moving = group.facts;
  const from = Math.max(...moving.map((fact) => instantNow(bench, fact)));
  const shift = intent.ms ?? (movesCoat(piece, moving) ? coatShift : otherShift);
  const limits = neighbours(bench, piece, moving, from, context.now);
  const wanted = intent.earlier ? from - shift : from + shift;
  const to = Math.min(Math.max(wanted, limits.after), limits.before);
  if (intent.earlier ? to >= from : to <= from) {
    return refuse(
      intent.earlier
        ? `Not moved: what came before it on ${called(piece)} was at the same time.`
        : `Not moved: later than this would be past ${from >= context.now ? 'now' : 'what came after it'}.`,
    );
  }
  return accept(
    moving.map((fact): NewBenchFact => ({ kind: 'stamp-moved', body: { fact: fact.id, to } })),
    `${nameGroup(bench, group.facts)} ${Math.round(Math.abs(to - from) / minute)} min ${to < from ? 'earlier' : 'later'}`,
    piece.id,
  );
}

const timedKinds = new Set<BenchFact['kind']>([
  'stamped',
  'step-done',
  'checked',
  'picked-up',
  'put-down',
  'timer-started',
]);

/** The last group made by hand that put something at an instant on this piece; its facts of that kind. */
function lastTimedGroup(
  bench: Bench,
  piece: string,
): { readonly facts: readonly BenchFact[] } | null {
  for (const id of bench.trail.done.toReversed()) {
    const facts = (bench.groups.get(id) ?? []).filter((fact) => timedKinds.has(fact.kind));
    if (facts.some((fact) => isAbout(bench, fact, piece))) return { facts };
  }
  return null;
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
  return bench.timers.find((timer) => timer.fact === fact.id)?.start ?? fact.at;
}

/** Whether a stamp belongs to a coat's long waits, and begins no dwell, glue or pot that is counted in minutes. */
function movesCoat(piece: Piece, facts: readonly BenchFact[]): boolean {
  const stamp = facts.find((fact) => fact.kind === 'stamped' || fact.kind === 'step-done');
  if (stamp === undefined || (stamp.kind !== 'stamped' && stamp.kind !== 'step-done')) return false;
  const step = piece.steps.find((each) => each.id === stamp.body.step);
  const rules = step === undefined ? [] : rulesOf(piece, step);
  const beginsDwell = rules.some(
    ({ kind, begins: { events, agent } }) =>
      stamp.kind === 'stamped' &&
      (kind === 'chemical' || kind === 'glue' || kind === 'pot') &&
      events.includes(stamp.body.event) &&
      (agent === undefined || agent === stamp.body.agent),
  );
  return !beginsDwell && rules.some((rule) => rule.kind === 'coat');
}

/** The instants between which the moved facts must stay: the events beside them on the piece and in the sessions they touch, and now. */
function neighbours(
  bench: Bench,
  piece: Piece,
  moving: readonly BenchFact[],
  from: Instant,
  now: Instant,
): { readonly after: Instant; readonly before: Instant } {
  const moved = new Set(moving.map((fact) => fact.id));
  const others: Instant[] = [...piece.stamps, ...piece.finishes, ...piece.checks]
    .filter((record) => !moved.has(record.fact))
    .map((record) => record.at);
  const touched = moving
    .map((fact) => sessionOf(bench, fact))
    .filter((session) => session !== undefined);
  for (const session of bench.sessions) {
    const isNear =
      touched.some((each) => each.hand === session.hand) ||
      session.targets.some((each) => each.piece === piece.id);
    if (session.dropped || !isNear) continue;
    if (!moved.has(session.startFact)) others.push(session.start);
    if (session.end !== null && (session.endFact === null || !moved.has(session.endFact)))
      others.push(session.end);
  }
  return {
    after: Math.max(piece.addedAt, ...others.filter((at) => at <= from)),
    before: Math.min(now, ...others.filter((at) => at > from)),
  };
}

/** Other ends or other work for a session, or that it never was. What was first recorded stays on record. */
export function correctSession(
  bench: Bench,
  intent: Asked<'correct session'>,
  context: IntentContext,
): Outcome {
  const session = bench.sessions.find((each) => each.id === intent.session);
  if (session === undefined)
    return refuse(`Not corrected: there is no session "${intent.session}".`);
  const start = intent.start ?? session.start;
  const end = intent.end ?? session.end;
  const targets = intent.targets ?? session.targets;
  const dropped = intent.dropped ?? session.dropped;
  const toCome = [intent.start, intent.end].find(
    (given) => given !== undefined && !(given <= context.now),
  );
  if (toCome !== undefined) return refuse('Not corrected: that time is still to come.');
  const badTargets = intent.targets && wrongTargets(bench, intent.targets);
  if (badTargets) return badTargets;
  const bad = wrongSession(bench, session, { start, end, dropped });
  if (bad !== null) return refuse(`Not corrected: ${bad}`);
  return accept(
    [
      factAt(context, {
        kind: 'session-corrected',
        body: { session: session.id, start, end, targets, dropped },
      }),
    ],
    `session on ${targetsCalled(bench, targets)} ${dropped ? 'dropped' : 'corrected'}`,
    targets[0]?.piece ?? null,
  );
}

function wrongTargets(bench: Bench, targets: readonly Target[]): Outcome | null {
  if (targets.length === 0) return refuse('Not corrected: a session is for at least one piece.');
  for (const target of targets) {
    const piece = anywhere(bench, target.piece, 'Not corrected');
    if (isOutcome(piece)) return piece;
    const badPart = wrongPart(piece, target.part, 'Not corrected');
    if (badPart) return badPart;
    const step = target.step === null ? null : stepOf(piece, target.step, 'Not corrected');
    if (step !== null && isOutcome(step)) return step;
  }
  return null;
}

function wrongSession(
  bench: Bench,
  session: Session,
  { start, end, dropped }: Pick<Session, 'start' | 'end' | 'dropped'>,
): string | null {
  if (end !== null && end < start) return 'it would end before it begins.';
  if (dropped) return null;
  const overlap = bench.sessions.find(
    (other) =>
      other.id !== session.id &&
      !other.dropped &&
      other.hand === session.hand &&
      other.start < (end ?? Number.POSITIVE_INFINITY) &&
      start < (other.end ?? Number.POSITIVE_INFINITY),
  );
  return overlap
    ? `${targetsCalled(bench, overlap.targets)} was in hand at that time. Correct that session first.`
    : null;
}

export function takeBack(bench: Bench): Outcome {
  const group = bench.trail.done.at(-1);
  if (group === undefined) return refuse('Not taken back: nothing is left to take back.');
  const facts = bench.groups.get(group) ?? [];
  return accept(
    [{ kind: 'group-withdrawn', body: { withdrawn: group } }],
    `taken back: ${nameGroup(bench, facts)}`,
    pieceOf(facts),
  );
}

export function bringBack(bench: Bench): Outcome {
  const group = bench.trail.takenBack.at(-1);
  if (group === undefined) return refuse('Not brought back: nothing was taken back last.');
  const facts = bench.groups.get(group) ?? [];
  return accept(
    [{ kind: 'group-restored', body: { restored: group } }],
    `brought back: ${nameGroup(bench, facts)}`,
    pieceOf(facts),
  );
}

const pieceOf = (facts: readonly BenchFact[]): string | null => {
  for (const { body } of facts)
    if ('piece' in body && typeof body.piece === 'string') return body.piece;
  return null;
};
