import { hour, minute, type Instant } from '../../../src/tracker/time/index.ts';
import {
  closesAt,
  opensAt,
  pingsOf,
  stateAt,
  type Window,
  type WindowState,
} from '../../../src/tracker/windows/index.ts';

/** Which states may follow which as time goes on. */
const legal: Readonly<Record<WindowState, readonly WindowState[]>> = {
  before: ['before', 'open', 'closing', 'late', 'barred', 'done'],
  open: ['open', 'closing', 'late', 'barred', 'done'],
  closing: ['closing', 'late', 'barred', 'done'],
  barred: ['barred', 'open', 'closing', 'late', 'done'],
  late: ['late', 'done'],
  done: ['done'],
};

/** Instants at which something could change, and the moments beside them. */
const instantsOf = (window: Window): readonly Instant[] =>
  [
    window.begunAt,
    window.closedAt ?? window.begunAt,
    ...window.stretches.map(({ begins }) => begins),
  ]
    .flatMap((instant) => [
      instant - hour,
      instant - 10 * minute,
      instant - 1,
      instant,
      instant + 1,
    ])
    .sort((a, b) => a - b);

/** Everything in which a window breaks the law; nothing where it keeps it. */
export function breaches(window: Window): readonly string[] {
  const found: string[] = [];
  const must = (holds: boolean, what: string): void => {
    if (!holds) found.push(`${window.key}: ${what}`);
  };
  const { stretches } = window;
  must(stretches[0]?.begins === window.begunAt, 'its first stretch begins with it');
  for (const [index, stretch] of stretches.entries()) {
    const next = stretches[index + 1];
    must(
      stretch.ends === (next?.begins ?? null),
      'each stretch ends where the next begins, the last one never',
    );
    must(next === undefined || next.begins > stretch.begins, 'no stretch is empty');
  }
  const places = stretches.map(({ from }) =>
    window.rule.stretches.findIndex((each) => each.from === from),
  );
  must(isSorted(places), 'stretches keep the order of the rule');
  let previous: WindowState | null = null;
  for (const instant of instantsOf(window)) {
    const state = stateAt(window, instant);
    must(
      previous === null || legal[previous].includes(state),
      `${previous} is not followed by ${state}`,
    );
    previous = state;
    const inForce = stretches.filter(
      ({ begins, ends }) => begins <= instant && (ends === null || instant < ends),
    );
    must(
      instant < window.begunAt || inForce.length === 1,
      'one stretch is in force at every instant',
    );
    const closing = closesAt(window, instant);
    must(closing === null || closing.at > instant, 'it closes in the future or not at all');
  }
  must((opensAt(window) ?? window.begunAt) >= window.begunAt, 'it does not open before it begins');
  const pings = pingsOf(window);
  must(isSorted(pings.map(({ at }) => at)), 'pings come in their order');
  must(
    pings.every(({ at }) => at >= window.begunAt),
    'no ping comes before the beginning',
  );
  must(
    new Set(pings.map(({ key }) => key)).size === pings.length,
    'every ping has a name of its own',
  );
  return found;
}

const isSorted = (list: readonly number[]): boolean =>
  list.every((each, index) => index === 0 || each >= list[index - 1]!);
