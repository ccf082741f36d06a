import { second, type Instant, type Milliseconds } from '../time/index.ts';
import type { EdgeSense, Window } from '../windows/model.ts';
import { pingsOf, type WindowPing } from '../windows/pings.ts';
import type { Bench, OddTimer, Pot } from './bench.ts';
import type { Piece } from './piece.ts';
import { piecesOnBench, standingsAt } from './standing.ts';

/** A ping of the bench: a window's, or the question whether what a hold waited for has come. */
export type BenchPing =
  | (WindowPing & {
      readonly about: 'window';
      readonly piece: Piece | null;
      readonly timer: OddTimer | null;
      readonly pot: Pot | null;
    })
  | {
      readonly about: 'hold';
      readonly key: string;
      readonly at: Instant;
      readonly loud: false;
      readonly piece: Piece;
    };

/** What goes out in one sending: one ping, or several that fell together, worst first. */
export type Sending = {
  readonly pings: readonly BenchPing[];
  /** Every ping that this sending settles, also those overtaken by a later one of the same window. */
  readonly settles: readonly string[];
  readonly loud: boolean;
  /** How late it is: more than a moment only after a sleep, or while nothing was running. */
  readonly lateBy: Milliseconds;
};

/** Pings that fall within this time of each other go out as one; what is loud or a dwell's is never told early for it. */
export const mergeWithin: Milliseconds = 45 * second;
/** A ping later than this was missed, and is told in a summary. */
export const missedAfter: Milliseconds = 2 * 60 * second;

/** The hour at which the question of a hold is asked on its day. */
const askAt = '09:00';

export type PingSense = EdgeSense & {
  /** The instant at which the shop's clock shows `time` on that day. */
  readonly instantOf: (day: string, time: string) => Instant;
  /** When the quiet hours end in which that instant lies; null outside them. Absent where there are none. */
  readonly quietTill?: (at: Instant) => Instant | null;
};

/** All pings of everything on the bench that is still running, past and future, in order. */
export function pingsOfBench(bench: Bench, now: Instant, sense: PingSense): readonly BenchPing[] {
  const pings: BenchPing[] = [];
  for (const { piece: shown, timer, pot, windows } of standingsAt(bench, now, sense)) {
    const piece = shown ?? pieceOfTimer(bench, timer);
    for (const window of windows) {
      for (const ping of pingsOf(window))
        pings.push({
          ...ping,
          at: heldBack(ping, sense),
          about: 'window',
          piece,
          timer: timer ?? timerOf(bench, window),
          pot,
        });
    }
  }
  for (const piece of piecesOnBench(bench)) {
    if (piece.hold === null || piece.hold.askAgain === null) continue;
    const at = Math.max(piece.hold.since, sense.instantOf(piece.hold.askAgain, askAt));
    pings.push({
      about: 'hold',
      // Named after the fact, which stays as it is where the clock is set.
      key: `hold/${piece.id}/${piece.hold.fact}`,
      at: sense.quietTill?.(at) ?? at,
      loud: false,
      piece,
    });
  }
  return pings.sort((a, b) => a.at - b.at);
}

/** Time to get up and go there, once quiet hours are over. */
const timeToGetThere: Milliseconds = 1800 * second;

/** A ping waits for the end of quiet hours where nothing is lost until a while after that. */
function heldBack({ at, loud, window }: WindowPing, sense: PingSense): Instant {
  const till = sense.quietTill?.(at) ?? null;
  if (till === null || loud || window.rule.kind === 'chemical') return at;
  const isLost = window.stretches.some(
    ({ begins, loss, meaning }) =>
      begins > at &&
      begins < till + timeToGetThere &&
      (loss !== 'costs nothing' || meaning === 'keep off'),
  );
  return isLost ? at : till;
}

/** The piece on the bench that an odd timer is for. */
export function pieceOfTimer(bench: Bench, timer: OddTimer | null): Piece | null {
  const piece = bench.pieces.get(timer?.piece ?? '');
  return piece?.place === 'bench' ? piece : null;
}

const timerOf = (bench: Bench, window: Window): OddTimer | null =>
  window.rule.kind === 'timer'
    ? (bench.timers.find((timer) => timer.id === window.subject.stepId) ?? null)
    : null;

/**
 * The pings that are due and were not claimed yet, as what is to be sent. Of several due pings of one window only the
 * latest is told; what fell together goes out together; what was missed by minutes is told as one summary, worst first.
 */
export function sendingsDue(
  bench: Bench,
  claimed: ReadonlySet<string>,
  now: Instant,
  sense: PingSense,
): readonly Sending[] {
  const open = pingsOfBench(bench, now, sense).filter((ping) => !claimed.has(ping.key));
  const due = open.filter((ping) => ping.at <= now);
  const latest = new Map<string, BenchPing>();
  for (const ping of due) latest.set(subjectOf(ping), ping);
  const told = [...latest.values()].sort((a, b) => a.at - b.at);
  const soon = new Map<string, BenchPing>();
  for (const ping of open) {
    const subject = subjectOf(ping);
    const isNew = !latest.has(subject) && !soon.has(subject);
    if (ping.at > now && isNew && mayBeEarly(ping)) soon.set(subject, ping);
  }
  const missed = told.filter((ping) => now - ping.at > missedAfter);
  const fresh = told.filter((ping) => now - ping.at <= missedAfter);
  const settled = (pings: readonly BenchPing[]): readonly string[] => {
    const subjects = new Set(pings.map(subjectOf));
    const overtaken = due.filter((ping) => subjects.has(subjectOf(ping)));
    return [...new Set([...overtaken, ...pings].map((ping) => ping.key))];
  };
  const heaps = fresh.length > 0 ? together([...fresh, ...soon.values()]) : [];
  const sent = heaps.filter((heap) => heap.some((ping) => ping.at <= now));
  return [...(missed.length > 0 ? [missed] : []), ...sent].map((pings) => ({
    pings: [...pings].sort(worstFirst),
    settles: settled(pings),
    loud: pings.some((ping) => ping.loud),
    lateBy: now - Math.min(...pings.map((ping) => ping.at)),
  }));
}

const mayBeEarly = (ping: BenchPing): boolean =>
  !ping.loud && (ping.about === 'hold' || ping.window.rule.kind !== 'chemical');

const subjectOf = (ping: BenchPing): string =>
  ping.about === 'window' ? ping.window.key : ping.key;

const severity = (ping: BenchPing): number => {
  if (ping.loud) return 0;
  if (ping.about === 'hold') return 3;
  return ping.stretch.loss === 'costs work' ? 1 : 2;
};

const worstFirst = (a: BenchPing, b: BenchPing): number => severity(a) - severity(b) || a.at - b.at;

function together(pings: readonly BenchPing[]): readonly (readonly BenchPing[])[] {
  const heaps: BenchPing[][] = [];
  for (const ping of pings) {
    const heap = heaps.at(-1);
    const first = heap?.[0];
    if (heap !== undefined && first !== undefined && ping.at - first.at <= mergeWithin)
      heap.push(ping);
    else heaps.push([ping]);
  }
  return heaps;
}

/** When the next ping is due that was not claimed yet; null when none is to come. */
export function nextPingAt(
  bench: Bench,
  claimed: ReadonlySet<string>,
  now: Instant,
  sense: PingSense,
): Instant | null {
  return (
    pingsOfBench(bench, now, sense).find((ping) => ping.at > now && !claimed.has(ping.key))?.at ??
    null
  );
}

/** A surface lost this long ago needs no machine kept awake for it. */
const lostLongAgo: Milliseconds = 600 * second;

/** Windows that can still spoil a surface: while one runs, the machine is to stay awake. */
export function spoilsRunning(bench: Bench, now: Instant, sense: EdgeSense): readonly Window[] {
  return standingsAt(bench, now, sense)
    .flatMap((standing) => standing.windows)
    .filter((window) =>
      window.stretches.some(
        (stretch) => stretch.loss === 'spoils' && stretch.begins > now - lostLongAgo,
      ),
    );
}
