import type { BenchFact, Target } from '../facts.ts';
import type { Intent, IntentContext } from '../intents.ts';
import { nameGroup } from '../name-group.ts';
import { accept, refuse, type Outcome } from '../outcome.ts';
import type { Bench, Session } from '../bench.ts';
import { anywhere, factAt, isOutcome, stepOf, wrongPart } from './context.ts';
import { targetsCalled } from './hands.ts';

type Asked<Do extends Intent['do']> = Extract<Intent, { do: Do }>;

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
  const isDropped = intent.dropped ?? session.dropped;
  const toCome = [intent.start, intent.end].find(
    (given) => given !== undefined && !(given <= context.now),
  );
  if (toCome !== undefined) return refuse('Not corrected: that time is still to come.');
  const badTargets = intent.targets && wrongTargets(bench, intent.targets);
  if (badTargets) return badTargets;
  const bad = wrongSession(bench, session, { start, end, dropped: isDropped });
  if (bad !== null) return refuse(`Not corrected: ${bad}`);
  return accept(
    [
      factAt(context, {
        kind: 'session-corrected',
        body: { session: session.id, start, end, targets, dropped: isDropped },
      }),
    ],
    `session on ${targetsCalled(bench, targets)} ${isDropped ? 'dropped' : 'corrected'}`,
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

/** Takes back the last key press or command of a person's hand. */
export function takeBack(bench: Bench): Outcome {
  const group = bench.trail.done.at(-1);
  if (group === undefined) return refuse('Not taken back: nothing is left to take back.');
  const facts = bench.groups.get(group) ?? [];
  return accept(
    [{ kind: 'group-withdrawn', body: { withdrawn: group } }],
    `taken back: ${nameGroup(bench, facts)}`,
    pieceOf(bench, facts),
  );
}

/** Brings back what was taken back last, until something new is done. */
export function bringBack(bench: Bench): Outcome {
  const group = bench.trail.takenBack.at(-1);
  if (group === undefined) return refuse('Not brought back: nothing was taken back last.');
  const facts = bench.groups.get(group) ?? [];
  return accept(
    [{ kind: 'group-restored', body: { restored: group } }],
    `brought back: ${nameGroup(bench, facts)}`,
    pieceOf(bench, facts),
  );
}

/** The piece that a key press was for: the last one that its facts name. */
function pieceOf(bench: Bench, facts: readonly BenchFact[]): string | null {
  for (const { body } of facts.toReversed()) {
    if ('piece' in body && typeof body.piece === 'string') return body.piece;
    const targets =
      'targets' in body
        ? body.targets
        : 'session' in body
          ? bench.sessions.find((session) => session.id === body.session)?.targets
          : undefined;
    if (targets?.[0] !== undefined) return targets[0].piece;
  }
  return null;
}
