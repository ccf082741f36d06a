import type { Happenings, StandIn, SubjectStamp } from '../windows/edges.ts';
import type { WindowIdentity, WindowRule, WindowSubject } from '../windows/model.ts';
import type { Session } from './bench.ts';
import type { Finish, PlannedStep, Stamp } from './piece.ts';
import { countsFor, passUnderWay, stampsOf } from './progress.ts';
import { finishOf, stampsOn, type SortedPiece } from './sorted-piece.ts';

/** Stable over restarts and corrected stamps. `owner` is the part, or empty for the whole piece. */
export const keyOf = (rule: WindowRule, subject: WindowSubject, owner: string): string =>
  [subject.pieceId, subject.stepId, rule.id, owner, subject.pass, subject.section ?? ''].join('/');

/** Everything on which the edges of one window can hang. */
export function happeningsOf(
  sorted: SortedPiece,
  step: PlannedStep,
  { key, rule, subject }: WindowIdentity,
): Happenings {
  const { piece, sessions } = sorted;
  const { partId: part, pass, section } = subject;
  const inScope = (stamp: { readonly pass: number; readonly section: number | null }): boolean =>
    rule.scope === 'step' ||
    (stamp.pass === pass && (rule.scope === 'pass' || stamp.section === section));
  const stamps = stampsOn(sorted, step.id).filter(
    (stamp) => countsFor(stamp.part, part) && inScope(stamp),
  );
  const finish = finishOf(sorted, step.id, part);
  const happened: SubjectStamp[] = stamps.map(({ event, agent, at, fact }) => ({
    event,
    agent,
    at,
    fact,
  }));
  // Done on the whole piece it ends each part in the pass that the part was in.
  const lastPass =
    finish?.part === null && part !== null
      ? passUnderWay(stampsOf(piece, step.id, part))
      : finish?.pass;
  if (finish !== undefined && (rule.scope === 'step' || lastPass === pass)) {
    // Finishing a step is the last stroke of its last pass, and takes the last section off.
    const agent = step.stamps.findLast((planned) => planned.agent !== undefined)?.agent ?? null;
    const hasLastStroke = stamps.some(
      (stamp) => stamp.event === 'last-stroke' && stamp.agent === agent && stamp.pass === lastPass,
    );
    if (!hasLastStroke) {
      happened.push({ event: 'last-stroke', agent, at: finish.at, fact: finish.fact });
    }
    if (rule.scope === 'section' && !happened.some((stamp) => stamp.event === 'section-off')) {
      happened.push({ event: 'section-off', agent: null, at: finish.at, fact: finish.fact });
    }
  }
  // What was tried before the parts went separate ways was tried on the whole.
  const whole = keyOf(rule, subject, '');
  const checks = piece.checks.filter(
    ({ window, part: tried }) => (window === key || window === whole) && countsFor(tried, part),
  );
  return {
    stamps: happened,
    checks,
    assumedStart:
      finish === undefined
        ? null
        : (firstSection(stamps) ?? pickUpBefore(sessions, piece.id, part, finish)),
  };
}

/** What went on in sections has its first stroke where the first of them went on. */
function firstSection(stamps: readonly Stamp[]): StandIn | null {
  const on = stamps.filter(({ event }) => event === 'section-on');
  const first = on.reduce<Stamp | null>(
    (earliest, stamp) => (earliest === null || stamp.at < earliest.at ? stamp : earliest),
    null,
  );
  return first === null ? null : { at: first.at, fact: first.fact, pressed: true };
}

/** When the hands that finished the step picked it up; the finish itself where no session is known. */
function pickUpBefore(
  sessions: readonly Session[],
  piece: string,
  part: string | null,
  finish: Finish,
): StandIn {
  const session = sessions.findLast(
    (each) =>
      !each.dropped &&
      each.start <= finish.at &&
      each.targets.some(
        (target) =>
          target.piece === piece &&
          target.step === finish.step &&
          (part === null || countsFor(target.part, part)),
      ),
  );
  return session
    ? { at: session.start, fact: session.startFact }
    : { at: finish.at, fact: finish.fact };
}
