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

/** All pings of a window, in order; those that would fall before its beginning, or before a check, are left out. */
export function pingsOf(window: Window): readonly WindowPing[] {
  const pings: WindowPing[] = [];
  // Whoever tried the surface knows what was to be told until then.
  const triedAt = Math.max(
    window.foundReadyAt ?? Number.NEGATIVE_INFINITY,
    window.heldBackAt ?? Number.NEGATIVE_INFINITY,
  );
  const add = (
    name: string,
    at: Instant,
    reason: PingReason,
    loud: boolean,
    stretch: TimedStretch,
  ): void => {
    if (at >= window.begunAt && at > triedAt)
      pings.push({
        key: `${window.key}/${window.hangsOn}/${name}`,
        at,
        reason,
        loud,
        window,
        stretch,
      });
  };
  for (const [place, stretch] of window.stretches.entries()) {
    const next = window.stretches[place + 1];
    const before = window.stretches[place - 1];
    // Named by its place in the rule: a stretch that loses all its time renames no other.
    const inRule = window.rule.stretches.findIndex((each) => each.from === stretch.from);
    const index = inRule < 0 ? place : inRule;
    switch (stretch.meaning) {
      case 'wait':
        break;
      case 'go': {
        if (before === undefined) break;
        const loud = next?.loss === 'spoils';
        if (window.rule.kind === 'chemical') {
          for (const lead of dwellLeads) {
            if (stretch.begins - lead > window.begunAt)
              add(`soon ${lead / minute} ${index}`, stretch.begins - lead, 'soon', false, stretch);
          }
        }
        add(`opens ${index}`, stretch.begins, 'opens', loud, stretch);
        break;
      }
      case 'go after work':
        add(`closed ${index}`, stretch.begins, 'closed', false, stretch);
        break;
      case 'keep off':
        add(`keep off ${index}`, stretch.begins, 'keep off', false, stretch);
        break;
      case 'late':
        add(`late ${index}`, stretch.begins, 'late', stretch.loss === 'spoils', stretch);
        break;
    }
    if (
      stretch.meaning === 'go' &&
      next !== undefined &&
      stretch.ends !== null &&
      losesSomething(next)
    ) {
      const at = stretch.ends - closingLead(window.rule.kind, stretch.ends - stretch.begins);
      if (at > stretch.begins)
        add(`closes soon ${index}`, at, 'closes soon', next.loss === 'spoils', next);
    }
  }
  return pings.sort((a, b) => a.at - b.at);
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
