import {
  begunInHand,
  labelOf,
  passCalled,
  passUnderWay,
  pieceOfTimer,
  stampsOf,
  stepPlace,
  type Piece,
  type PlannedStep,
  type Pot,
  type Standing,
} from '../../tracker/bench/index.ts';
import { foreseenOn, handsOnMinutes } from '../../tracker/estimate/index.ts';
import { closesAt, type Window } from '../../tracker/windows/index.ts';
import type { Role } from '../drawing/index.ts';
import {
  callWords,
  clock,
  dayWords,
  rangeInWords,
  thenWords,
  timeSince,
  whenInWords,
  windowWords,
} from '../format/index.ts';
import type { View } from '../screen.ts';

/** What one row says: the words that a clock completes, the clock, and how long. */
export type RowWords = {
  readonly name: string;
  readonly words: string;
  readonly clock: string;
  readonly left: string;
  readonly role: Role;
  /** The second line: what runs out first, what the line is about, which gives way, and what is told of it. */
  readonly then: { readonly first: string; readonly about: string; readonly told: string };
  readonly window: Window | null;
  /** The figure shows seconds. */
  readonly ticking: boolean;
};

const tenMinutes = 600_000;

export function rowWords(standing: Standing, view: View): RowWords {
  const { now, snapshot } = view;
  const { shop } = snapshot;
  const name = standing.piece?.name ?? labelOf(standing);
  const { window } = standing;
  const base = { name, window, then: secondLine(standing, view) };
  if (standing.rank === 'in hand' && standing.session !== null && begunInHand(standing) === null) {
    const { start } = standing.session;
    const shown = {
      words: 'in hand since',
      clock: clock(start, shop),
      left: timeSince(start, now, shop),
    };
    return { ...base, ...shown, role: 'strong', ticking: window !== null && ticks(window, view) };
  }
  if (window !== null) {
    const told = windowWords(window, now, shop);
    return {
      ...base,
      words: told.words,
      clock: told.clock,
      left: told.left,
      role: told.role,
      ticking: ticks(window, view),
    };
  }
  const words = standing.rank === 'finished' ? 'every step done' : 'waits for hands';
  return {
    ...base,
    words,
    clock: '',
    left: '',
    role: standing.rank === 'finished' ? 'quiet' : 'text',
    ticking: false,
  };
}

/** A window's figure shows seconds while it counts down below ten minutes. */
function ticks(window: Window, { now, snapshot }: View): boolean {
  const told = windowWords(window, now, snapshot.shop);
  return told.counts === 'down' && told.at !== null && told.at - now <= tenMinutes;
}

/** `not before Thu 02:54, `: the step in hand waits for a window that is not open, and that it didn't begin itself. */
function notBefore({ id, needs }: PlannedStep, window: Window | null, view: View): string {
  const { now, snapshot } = view;
  const milestone = window?.rule.milestone;
  if (window === null || milestone === undefined || !needs.includes(milestone)) return '';
  if (window.subject.stepId === id) return '';
  const told = windowWords(window, now, snapshot.shop);
  const isShut = told.state === 'before' || told.state === 'barred';
  return isShut && told.at !== null
    ? `not before ${whenInWords(told.at, now, snapshot.shop)}, `
    : '';
}

/**
 * `test scrape, by 15:45; `: what the step in hand has begun, where the row has no room for its verb; else what its end
 * costs, `then keep off till Sun 20:10; `; late, what helps.
 */
function begunWords(standing: Standing, { now, snapshot }: View): string {
  const begun = begunInHand(standing);
  if (begun === null) return '';
  const { shop } = snapshot;
  const { words, state } = windowWords(begun, now, shop);
  const then = thenWords(begun, now, shop);
  if (state === 'late') return `${then || begun.rule.verb}; `;
  const [verb = ''] = begun.rule.verb.split(' ');
  if (begun.nextPass === undefined && !words.includes(verb))
    return `${callWords(begun, now, shop)}; `;
  return closesAt(begun, now) === null ? '' : `${then}; `;
}

const about = (what: string, told = '', first = ''): RowWords['then'] => ({
  first,
  about: what,
  told,
});

/** What is next, and what comes after that or what it costs. */
function secondLine(standing: Standing, view: View): RowWords['then'] {
  const { piece, window, step, session, rank, timer, pot } = standing;
  const { bench, shop } = view.snapshot;
  if (timer !== null) {
    const on = pieceOfTimer(bench, timer);
    return about(on === null ? 'odd timer' : `odd timer on ${on.number} ${on.name}`);
  }
  if (pot !== null && window !== null) return about(potLine(pot, window, view));
  if (piece === null) return about('');
  if (rank === 'in hand' && session !== null) {
    const targets = session.targets.filter((each) => each.piece === piece.id);
    const [target] = targets;
    const part = targets.length > 1 ? undefined : partCalled(piece, target?.part ?? null);
    const worked = piece.steps.find((each) => each.id === target?.step);
    if (worked === undefined) return about('other work');
    const place = stepPlace(piece, worked.id);
    const expected = foreseenOn(bench, worked, piece);
    const done = standing.step?.id === worked.id ? '' : ', done';
    const early = notBefore(worked, window, view);
    const spent = handsOnMinutes(bench, piece, worked.id, view.now, session);
    const before = spent >= 1 ? `${Math.round(spent)} min before, ` : '';
    // What it waits for comes before what row 4 says as well.
    const held = piece.hold === null ? '' : `${holdWords(piece.hold)}; `;
    return about(
      [...(part === undefined ? [] : [part]), worked.name].join(', '),
      `${passWords(piece, worked, standing.part, done)}${done}, ${place.place} of ${place.of}; ${held}${early}${before}expected ${rangeInWords(expected.low, expected.high)} min`,
      `${begunWords(standing, view)}${sectionWords(begunInHand(standing))}`,
    );
  }
  if (window !== null) {
    const from =
      piece.steps.find((each) => each.id === window.subject.stepId)?.name ?? window.rule.verb;
    const part = partCalled(piece, window.subject.partId);
    const what = `${part === undefined ? '' : `${part}, `}${sectionWords(window)}${from}`;
    const then = thenWords(window, view.now, shop);
    return about(what, then === '' ? '' : `; ${then}`);
  }
  if (rank === 'hold' && piece.hold !== null) return about(holdWords(piece.hold));
  if (step === null) return about('j: job card; y: off the bench');
  const expected = foreseenOn(bench, step, piece);
  // Hands-on, as what is expected beside it, and as the opened piece and the hours have it.
  const spent = handsOnMinutes(bench, piece, step.id, view.now);
  const place = stepPlace(piece, step.id);
  const soFar = spent >= 1 ? `${Math.round(spent)} min so far, ` : '';
  return about(
    step.name,
    `, ${place.place} of ${place.of}; ${soFar}expected ${rangeInWords(expected.low, expected.high)} min`,
  );
}

const partCalled = ({ parts }: Piece, part: string | null): string | undefined =>
  parts.find(({ id }) => id === part)?.name;

const holdWords = ({ reason, askAgain }: NonNullable<Piece['hold']>): string =>
  `hold: ${reason}${askAgain === null ? '' : `, ask ${dayWords(askAgain)}`}`;

/** `section 4, `: which one works, where it is not the whole surface. */
const sectionWords = (window: Window | null): string =>
  window === null || window.subject.section === null ? '' : `section ${window.subject.section}, `;

/** `, coat 2 of 4`: which of several is under way in the step in hand. */
function passWords(piece: Piece, step: PlannedStep, part: string | null, done: string): string {
  const isOneOfSeveral = done === '' && (step.passes ?? 1) > 1;
  return isOneOfSeveral
    ? `, ${passCalled(step, passUnderWay(stampsOf(piece, step.id, part)))}`
    : '';
}

/** What was mixed and when, on which pieces it is, and what comes of leaving it. */
function potLine(pot: Pot, window: Window, { now, snapshot }: View): string {
  const { bench, shop } = snapshot;
  const on = [...bench.pieces.values()]
    .filter(({ stamps }) => stamps.some((stamp) => stamp.pot === pot.id))
    .flatMap(({ number }) => number ?? []);
  const then = thenWords(window, now, shop);
  return [
    `mixed ${whenInWords(pot.mixedAt, now, shop)}`,
    ...(on.length === 0 ? [] : [`on ${on.join(', ')}`]),
    ...(then === '' ? [] : [then]),
  ].join('; ');
}
