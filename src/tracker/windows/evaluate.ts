import { hour, minute, type Instant } from '../time/index.ts';
import { chooseStamp, latestFinding, placeEdge, type Happenings, type Placed } from './edges.ts';
import type {
  EdgeSense,
  TimedStretch,
  Window,
  WindowIdentity,
  WindowRule,
  WindowState,
} from './model.ts';

/**
 * Works out one window from what happened on its subject.
 * @param closedAt when something ended it that is not in its rule
 * @returns null as long as the stamp that begins it has not been made.
 */
export function workOutWindow(
  { key, rule, subject }: WindowIdentity,
  happenings: Happenings,
  sense: EdgeSense,
  closedAt: Instant | null = null,
): Window | null {
  const beginning = chooseStamp(rule.begins, happenings);
  if (!beginning.known) return null;
  const placed = rule.stretches.map((stretch): Placed =>
    stretch.from === undefined ? beginning : placeEdge(stretch.from, happenings, sense),
  );
  const stretches = layOut(rule, placed, beginning.at);
  const deciding = placed.filter((edge) => edge.known);
  const latestCheck = latestFinding(happenings);
  const shut =
    closedAt ??
    (rule.closedBy.by === 'ready' && latestCheck?.finding === 'ready' ? latestCheck.at : null);
  return {
    key,
    rule,
    subject,
    begunAt: beginning.at,
    hangsOn: latestCheck?.finding === 'not yet' ? latestCheck.fact : beginning.fact,
    assumed: deciding.some((edge) => edge.assumed),
    stretches,
    ...(latestCheck?.finding === 'not yet' ? { heldBackAt: latestCheck.at } : {}),
    foundReadyAt: latestCheck?.finding === 'ready' ? latestCheck.at : null,
    closedAt: shut,
  };
}

/**
 * Puts the stretches one after another: an edge counts as at least the one before it, an edge that is not known yet
 * keeps all later ones open. Stretches that this leaves without time are dropped, so that none is ever entered.
 */
function layOut(
  rule: WindowRule,
  placed: readonly Placed[],
  begunAt: Instant,
): readonly TimedStretch[] {
  const timed: TimedStretch[] = [];
  let reached = begunAt;
  for (const [index, stretch] of rule.stretches.entries()) {
    const edge = placed[index];
    if (edge === undefined || !edge.known) break;
    const begins = Math.max(reached, edge.at);
    const next = placed[index + 1];
    const ends = next?.known === true ? Math.max(begins, next.at) : null;
    reached = begins;
    if (ends !== begins) timed.push({ ...stretch, begins, ends });
  }
  return timed;
}

/** The stretch in force at an instant; before the window begins, its first. */
export function stretchAt(window: Window, now: Instant): TimedStretch {
  const inForce =
    window.stretches.findLast((stretch) => stretch.begins <= now) ?? window.stretches[0];
  if (inForce === undefined) throw new Error(`window ${window.key} has no stretch`);
  return inForce;
}

/** The stretch after the one in force, if it is known. */
export function stretchAfter(window: Window, now: Instant): TimedStretch | null {
  const index = window.stretches.indexOf(stretchAt(window, now));
  return window.stretches[index + 1] ?? null;
}

/** How long before its end an open window counts as closing: an hour where work is lost, ten minutes where it spoils. */
const closingLead = { spoils: 10 * minute, 'costs work': hour, 'costs nothing': 0 } as const;

/** The one state of a window at an instant. */
export function stateAt(window: Window, now: Instant): WindowState {
  if (window.closedAt !== null && window.closedAt <= now) return 'done';
  const stretch = stretchAt(window, now);
  switch (stretch.meaning) {
    case 'wait':
      return 'before';
    case 'go': {
      const next = stretchAfter(window, now);
      if (next === null || stretch.ends === null) return 'open';
      return stretch.ends - now <= closingLead[next.loss] ? 'closing' : 'open';
    }
    case 'keep off':
      return 'barred';
    case 'go after work':
    case 'late':
      return 'late';
  }
}

/** When the window can first be used without loss, if that is known: the beginning of its first "go". */
export const opensAt = (window: Window): Instant | null =>
  window.stretches.find((stretch) => stretch.meaning === 'go')?.begins ?? null;

/**
 * When something is lost: the end of the "go" in force, or of the next one; where there is no "go" to come, the beginning
 * of what lateness brings next. Null where nothing ends it, or it is not known.
 */
export function closesAt(
  window: Window,
  now: Instant,
): { readonly at: Instant; readonly next: TimedStretch } | null {
  const index = window.stretches.findIndex(
    (stretch) => stretch.meaning === 'go' && (stretch.ends === null || stretch.ends > now),
  );
  const next =
    index < 0
      ? window.stretches.find((stretch) => stretch.meaning !== 'wait' && stretch.begins > now)
      : window.stretches[index + 1];
  return next === undefined ? null : { at: next.begins, next };
}
