import { nextLoss, type Standing } from '../../tracker/bench/index.ts';
import { minute, type Instant } from '../../tracker/time/index.ts';
import {
  closesAt,
  stateAt,
  stretchAt,
  type Loss,
  type Window,
} from '../../tracker/windows/index.ts';
import { nextOpening } from '../format/outlook.ts';
import { loudPings, quietPing } from '../bench/head.ts';
import type { View } from '../screen.ts';

/** One window as it is seen from across the shop. */
export type FarCall = {
  readonly standing: Standing;
  readonly window: Window;
  /** What is counted down to; null for what is lost already, and for what waits for hands without an end. */
  readonly at: Instant | null;
  /** What is lost next. */
  readonly loss: Loss;
  /** It is lost already. */
  readonly isLost: boolean;
  readonly isLoud: boolean;
};

export type FarCalls = {
  /** What is lost first comes first, at most two; in the calm the next opening or closing alone, else what waits for hands. */
  readonly calls: readonly FarCall[];
  readonly isCalm: boolean;
};

/** Only what is so near, and costs something, is drawn at its largest. */
const near = 10 * minute;

/** What there is to be seen from across the shop, and how much of it. */
export function whatCalls(all: readonly Standing[], view: View): FarCalls {
  const { now } = view;
  const loud = loudPings(view)[0];
  const seen = all.flatMap((standing): FarCall[] => {
    const { window, piece, rank } = standing;
    if (window === null || rank === 'curing') return [];
    const isLoud = loud !== undefined && loud.piece !== null && piece?.id === loud.piece;
    const at = decisive(window, now);
    const loss = nextLoss(window, now);
    const isLost = loss === 'spoils' && stretchAt(window, now).meaning === 'late';
    return [{ standing, window, at, loss, isLost, isLoud }];
  });
  const urgent = seen.filter((call) => isUrgent(call, now));
  if (urgent.length > 0) {
    const calls = urgent.toSorted((a, b) => order(a) - order(b) || due(a) - due(b)).slice(0, 2);
    return { calls, isCalm: false };
  }
  const next = seen.filter(({ at }) => at !== null).toSorted((a, b) => due(a) - due(b));
  const waiting = seen.filter(({ window }) => waitsForHands(window, now));
  // Whoever heard the bell looks for what it rang for.
  const rung = quietPing(view)?.piece ?? null;
  const pinged = seen.filter(({ standing }) => rung !== null && standing.piece?.id === rung);
  return { calls: [...pinged, ...next, ...waiting].slice(0, 1), isCalm: true };
}

/** The edge that counts: an opening while it works or dries, a closing that costs something while it is open. */
function decisive(window: Window, now: Instant): Instant | null {
  switch (stateAt(window, now)) {
    case 'before':
    case 'barred':
      return nextOpening(window, now);
    case 'open':
    case 'closing':
      return closesAt(window, now)?.at ?? null;
    case 'late':
    case 'done':
      return null;
  }
}

/** It may be tried or worked, or should have been. */
const waitsForHands = (window: Window, now: Instant): boolean =>
  !['before', 'barred', 'done'].includes(stateAt(window, now));

function isUrgent({ loss, at, isLost, isLoud }: FarCall, now: Instant): boolean {
  if (isLoud || isLost) return true;
  return loss !== 'costs nothing' && at !== null && at - now < near;
}

/** What calls loudly; what can still be saved; what is lost; what costs work. */
function order({ loss, isLost, isLoud }: FarCall): number {
  if (isLoud) return 0;
  if (loss === 'spoils') return isLost ? 2 : 1;
  return 3;
}

const due = ({ at }: FarCall): number => at ?? 0;
