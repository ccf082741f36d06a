import { hour, minute, type Instant, type Milliseconds } from '../time/index.ts';
import type { TimedStretch, Window, WindowKind } from './model.ts';

/** Why a ping goes out. */
export type PingReason = 'soon' | 'opens' | 'closes soon' | 'closed' | 'late' | 'keep off';

/** One ping that a window holds ready for an instant. Its key is the same on every screen and after every restart. */
export type WindowPing = {
  readonly key: string;
  readonly at: Instant;
  readonly reason: PingReason;
  /** Repeats until a key is pressed: something spoils. */
  readonly loud: boolean;
  readonly window: Window;
  /** The stretch that begins (opens, closed, late) or that is about to (soon, closes soon). */
  readonly stretch: TimedStretch;
};

/** Before a dwell ends it pings at three minutes and at one. */
const dwellLeads: readonly Milliseconds[] = [3 * minute, minute];

/** A ping before it is known whether it goes out; its name tells it from the others of its window. */
type Planned = Omit<WindowPing, 'key' | 'window'> & { readonly name: string };

/** All pings of a window, in order; those that would fall before its beginning, or before a check, are left out. */
export function pingsOf(window: Window): readonly WindowPing[] {
  // Whoever tried the surface knows what was to be told until then.
  const triedAt = Math.max(
    window.foundReadyAt ?? Number.NEGATIVE_INFINITY,
    window.heldBackAt ?? Number.NEGATIVE_INFINITY,
  );
  return window.stretches
    .flatMap((stretch, place) => [
      ...beginningOf(window, stretch, place),
      ...endSoonOf(window, stretch, place),
    ])
    .filter(({ at }) => at >= window.begunAt && at > triedAt)
    .map(({ name, ...ping }) => ({
      key: `${window.key}/${window.hangsOn}/${name}`,
      ...ping,
      window,
    }))
    .sort((a, b) => a.at - b.at);
}

/** What is told when a stretch begins, and of a dwell shortly before. */
function beginningOf(window: Window, stretch: TimedStretch, place: number): readonly Planned[] {
  const at = stretch.begins;
  const number = placeInRule(window, stretch, place);
  switch (stretch.meaning) {
    case 'wait':
      return [];
    case 'go': {
      if (place === 0) return [];
      const isLoud = window.stretches[place + 1]?.loss === 'spoils';
      return [
        ...soonBefore(window, stretch, number),
        { name: `opens ${number}`, at, reason: 'opens', loud: isLoud, stretch },
      ];
    }
    case 'go after work':
      return [{ name: `closed ${number}`, at, reason: 'closed', loud: false, stretch }];
    case 'keep off':
      return [{ name: `keep off ${number}`, at, reason: 'keep off', loud: false, stretch }];
    case 'late': {
      const isLoud = stretch.loss === 'spoils';
      return [{ name: `late ${number}`, at, reason: 'late', loud: isLoud, stretch }];
    }
  }
}

const soonBefore = (
  { rule, begunAt }: Window,
  stretch: TimedStretch,
  number: number,
): readonly Planned[] =>
  (rule.kind === 'chemical' ? dwellLeads : [])
    .map((lead): Planned => ({
      name: `soon ${lead / minute} ${number}`,
      at: stretch.begins - lead,
      reason: 'soon',
      loud: false,
      stretch,
    }))
    .filter(({ at }) => at > begunAt);

/** What is told shortly before an open stretch ends, where something is lost by that. */
function endSoonOf(window: Window, stretch: TimedStretch, place: number): readonly Planned[] {
  const next = window.stretches[place + 1];
  if (stretch.meaning !== 'go' || stretch.ends === null) return [];
  if (next === undefined || !losesSomething(next)) return [];
  const at = stretch.ends - closingLead(window.rule.kind, stretch.ends - stretch.begins);
  if (at <= stretch.begins) return [];
  const name = `closes soon ${placeInRule(window, stretch, place)}`;
  return [{ name, at, reason: 'closes soon', loud: next.loss === 'spoils', stretch: next }];
}

/** Named by its place in the rule: a stretch that loses all its time renames no other. */
function placeInRule({ rule }: Window, { from }: TimedStretch, place: number): number {
  const inRule = rule.stretches.findIndex((each) => each.from === from);
  return inRule < 0 ? place : inRule;
}

const losesSomething = (next: TimedStretch): boolean =>
  next.loss !== 'costs nothing' || next.meaning === 'keep off';

/** How long before its closing a window pings: long enough to get there, short enough to be about now. */
function closingLead(kind: WindowKind, length: Milliseconds): Milliseconds {
  // A dwell's end is a minute's work at arm's length; what stays wet for long leaves hands free for something else.
  if (kind === 'chemical' && length < 40 * minute) return minute;
  if (length >= 3 * hour) return 30 * minute;
  if (length >= 40 * minute) return 10 * minute;
  return 3 * minute;
}
