import type { Product } from '../trade/schedule.ts';
import type { Instant } from '../time/index.ts';
import { chooseStamp, type Happenings, type SubjectStamp } from '../windows/edges.ts';
import { forEitherWood } from '../windows/either-wood.ts';
import { workOutWindow } from '../windows/evaluate.ts';
import type {
  EdgeSense,
  Milestone,
  StampChoice,
  Stretch,
  Window,
  WindowRule,
  WindowSubject,
} from '../windows/model.ts';
import type { Finish, Piece, PlannedStep, Session, Stamp } from './piece.ts';
import { countsFor, passUnderWay } from './progress.ts';
import { windowOwners } from './worked-apart.ts';

/** All windows that a piece's stamps have begun, also those that are over. */
export function windowsOfPiece(
  piece: Piece,
  sessions: readonly Session[],
  sense: EdgeSense,
): readonly Window[] {
  return piece.steps.flatMap((step) => windowsOfStep(piece, step, sessions, sense));
}

/** The rules a step starts: its product's for the piece's wood, and its own. */
export function rulesOf(piece: Piece, step: PlannedStep): readonly WindowRule[] {
  const product = step.product === undefined ? undefined : piece.products[step.product];
  if (product === undefined) return step.windows;
  return [...product.windows, ...rulesForWood(product, piece.wood), ...step.windows];
}

function rulesForWood({ byWood }: Product, wood: Piece['wood']): readonly WindowRule[] {
  const { soft = [], hard = [] } = byWood ?? {};
  if (wood === 'soft') return soft;
  return wood === 'hard' ? hard : forEitherWood(soft, hard);
}

function windowsOfStep(
  piece: Piece,
  step: PlannedStep,
  sessions: readonly Session[],
  sense: EdgeSense,
): readonly Window[] {
  const rules = rulesOf(piece, step);
  const stamps = piece.stamps.filter((stamp) => stamp.step === step.id);
  const finishes = piece.finishes.filter((finish) => finish.step === step.id);
  if (rules.length === 0 || (stamps.length === 0 && finishes.length === 0)) return [];
  const windows: Window[] = [];
  for (const { part, keyPart } of windowOwners(piece, step)) {
    const own = stamps.filter((stamp) => countsFor(stamp.part, part));
    const passes = passUnderWay(own);
    for (const rule of rules) {
      for (const { pass, section } of subjectsOf(rule, own, passes)) {
        // Between passes there is something to wait for only while another pass is to come.
        if (rule.closedBy.by === 'next pass' && pass >= (step.passes ?? 1)) continue;
        const subject = { pieceId: piece.id, stepId: step.id, partId: part, pass, section };
        const key = keyOf(rule, subject, keyPart);
        const happenings = happeningsOf(piece, step, sessions, rule, subject, key);
        const begun = workOutWindow(rule, subject, key, happenings, null, sense);
        if (begun === null) continue;
        const closedAt = closing(piece, step, begun, own, happenings) ?? begun.closedAt;
        windows.push({ ...begun, closedAt, stretches: withWorkDone(piece, step, begun) });
      }
    }
  }
  return windows;
}

function subjectsOf(
  rule: WindowRule,
  stamps: readonly Stamp[],
  passes: number,
): readonly { readonly pass: number; readonly section: number | null }[] {
  switch (rule.scope) {
    case 'step':
      return [{ pass: 1, section: null }];
    case 'pass':
      return Array.from({ length: passes }, (_, index) => ({ pass: index + 1, section: null }));
    case 'section': {
      const seen = new Map<string, { pass: number; section: number }>();
      for (const { pass, section } of stamps) {
        if (section !== null) seen.set(`${pass}/${section}`, { pass, section });
      }
      return [...seen.values()];
    }
  }
}

const keyOf = (rule: WindowRule, subject: WindowSubject, owner: string): string =>
  [subject.pieceId, subject.stepId, rule.id, owner, subject.pass, subject.section ?? ''].join('/');

/** Everything on which the edges of a window hang; null where its step is not on the piece. */
export function happeningsOfWindow(
  piece: Piece,
  sessions: readonly Session[],
  { rule, subject, key }: Pick<Window, 'rule' | 'subject' | 'key'>,
): Happenings | null {
  const step = piece.steps.find(({ id }) => id === subject.stepId);
  return step === undefined ? null : happeningsOf(piece, step, sessions, rule, subject, key);
}

function happeningsOf(
  piece: Piece,
  step: PlannedStep,
  sessions: readonly Session[],
  rule: WindowRule,
  subject: WindowSubject,
  key: string,
): Happenings {
  const { partId: part, pass, section } = subject;
  const inScope = (stamp: { readonly pass: number; readonly section: number | null }): boolean =>
    rule.scope === 'step' ||
    (stamp.pass === pass && (rule.scope === 'pass' || stamp.section === section));
  const stamps = piece.stamps.filter(
    (stamp) => stamp.step === step.id && countsFor(stamp.part, part) && inScope(stamp),
  );
  const finish = piece.finishes.findLast(
    (each) => each.step === step.id && countsFor(each.part, part),
  );
  const happened: SubjectStamp[] = stamps.map(({ event, agent, at, fact }) => ({
    event,
    agent,
    at,
    fact,
  }));
  if (finish !== undefined && (rule.scope === 'step' || finish.pass === pass)) {
    // Finishing a step is the last stroke of its last pass, and takes the last section off.
    const agent = step.stamps.findLast((planned) => planned.agent !== undefined)?.agent ?? null;
    const hasLastStroke = stamps.some(
      (stamp) =>
        stamp.event === 'last-stroke' && stamp.agent === agent && stamp.pass === finish.pass,
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
    assumedStart: finish === undefined ? null : pickUpBefore(sessions, piece.id, part, finish),
  };
}

/** When the hands that finished the step picked it up; the finish itself where no session is known. */
function pickUpBefore(
  sessions: readonly Session[],
  piece: string,
  part: string | null,
  finish: Finish,
): { readonly at: Instant; readonly fact: string } {
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

/** What ended a window, by its rule or because a later step has taken its place. */
function closing(
  piece: Piece,
  step: PlannedStep,
  window: Window,
  stepStamps: readonly Stamp[],
  happenings: Happenings,
): Instant | null {
  const { rule, subject } = window;
  const ends: Instant[] = [];
  const finish = piece.finishes.findLast(
    (each) => each.step === step.id && countsFor(each.part, subject.partId),
  );
  if (rule.closedBy.by === 'stamp') {
    const { stamp: wanted } = rule.closedBy;
    const beginning = chooseStamp(rule.begins, happenings);
    const begun = happenings.stamps.findIndex(
      (stamp) => beginning.known && stamp.fact === beginning.fact,
    );
    for (const [index, stamp] of happenings.stamps.entries()) {
      // Told later is later too: a clock that was set back must not keep a window from closing.
      const isLater = stamp.at >= window.begunAt || (begun >= 0 && index > begun);
      if (isChosen(wanted, stamp.event, stamp.agent) && isLater) ends.push(stamp.at);
    }
    const isPlanned = step.stamps.some((planned) =>
      isChosen(wanted, planned.event, planned.agent ?? null),
    );
    // A finished step leaves no stamp of its own to wait for, but a pot has still to be washed out.
    if (finish !== undefined && isPlanned && rule.kind !== 'pot') ends.push(finish.at);
  }
  if (rule.closedBy.by === 'next pass' && finish !== undefined) ends.push(finish.at);
  if (rule.scope === 'pass') {
    const next = stepStamps.find((stamp) => stamp.pass === subject.pass + 1);
    if (next) ends.push(next.at);
  }
  const reach = rule.milestone;
  if (reach !== undefined) {
    for (const later of laterSteps(piece, step)) {
      if (!endsMilestone(piece, later, reach)) continue;
      const started = firstTouch(piece, later.id, subject.partId);
      if (started !== null && started >= window.begunAt) ends.push(started);
    }
  }
  return ends.length === 0 ? null : Math.min(...ends);
}

const isChosen = (choice: StampChoice, event: string, agent: string | null): boolean =>
  choice.events.some((each) => each === event) &&
  (choice.agent === undefined || choice.agent === agent);

const laterSteps = (piece: Piece, step: PlannedStep): readonly PlannedStep[] =>
  piece.steps.slice(piece.steps.findIndex((each) => each.id === step.id) + 1);

/** A later step ends a milestone when it waited for it, or starts that same milestone anew (another coat). */
const endsMilestone = (piece: Piece, later: PlannedStep, milestone: Milestone): boolean =>
  later.needs.includes(milestone) ||
  rulesOf(piece, later).some((rule) => rule.milestone === milestone);

function firstTouch(piece: Piece, step: string, part: string | null): Instant | null {
  const onSurface = piece.stamps.filter(({ event }) => event !== 'mixed' && event !== 'washed-out');
  const touches = [...onSurface, ...piece.finishes].filter(
    (each) => each.step === step && (part === null || countsFor(each.part, part)),
  );
  return touches.length === 0 ? null : Math.min(...touches.map((touch) => touch.at));
}

/** Once a later scuff is done, what was to be scuffed first is open again and loses nothing. */
function withWorkDone(piece: Piece, step: PlannedStep, window: Window): Window['stretches'] {
  if (!window.stretches.some((stretch) => stretch.meaning === 'go after work'))
    return window.stretches;
  const scuffed = laterSteps(piece, step).some(
    (later) =>
      later.stepClass === 'scuff' &&
      piece.finishes.some(
        (finish) => finish.step === later.id && countsFor(finish.part, window.subject.partId),
      ),
  );
  if (!scuffed) return window.stretches;
  const kept = window.stretches.findIndex((stretch) => stretch.meaning === 'go after work');
  const before = window.stretches.slice(0, kept);
  const last = before.at(-1);
  if (last?.meaning === 'go') return [...before.slice(0, -1), { ...last, ends: null }];
  const opened = window.stretches[kept];
  return opened === undefined ? before : [...before, { ...asGo(opened), ends: null }];
}

const asGo = <Timed extends Stretch>({
  says: _,
  ...stretch
}: Timed): Omit<Timed, 'says'> & { meaning: 'go' } => ({
  ...stretch,
  meaning: 'go',
  loss: 'costs nothing',
});
