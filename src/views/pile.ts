import type { Instant } from '../tracker/time/index.ts';
import { freshGuard, listClosed } from './keys/guard.ts';
import type { Step } from './screen.ts';
import type { Screen } from './screens.ts';

/** A screen on the pile; its number tells it from another of the same kind that was opened later. */
export type Laid = { readonly screen: Screen; readonly opening: number };

/** The screens that are open: the top one has the keyboard and is drawn, the lowest of those below is the bench. */
export type Pile = {
  readonly top: Laid;
  readonly below: readonly Laid[];
  /** How many screens were laid on it so far. */
  readonly openings: number;
};

export const pileOf = (screen: Screen): Pile => ({
  top: { screen, opening: 0 },
  below: [],
  openings: 1,
});

/** The pile after what a key did to its top screen. */
export function pileAfter(pile: Pile, step: Step<Screen>, present: () => Instant): Pile {
  const kept: Laid = { ...pile.top, screen: step.state ?? pile.top.screen };
  if (step.back !== undefined) {
    const left = step.back === 'bench' ? pile.below.slice(0, 1) : pile.below;
    const under = left.at(-1);
    return under === undefined
      ? { ...pile, top: kept }
      : { ...pile, top: returnedTo(under, step.select, present), below: left.slice(0, -1) };
  }
  if (step.replace !== undefined) return withLaid(pile, pile.below, step.replace);
  if (step.open !== undefined) return withLaid(pile, [...pile.below, kept], step.open);
  return { ...pile, top: kept };
}

const withLaid = ({ openings }: Pile, below: readonly Laid[], screen: Screen): Pile => ({
  top: { screen, opening: openings },
  below,
  openings: openings + 1,
});

/** Where gloves act it is told that a screen on top has closed: the key that closed it must not act there too. */
function returnedTo(
  { screen, opening }: Laid,
  select: string | undefined,
  present: () => Instant,
): Laid {
  if (screen.is === 'piece') {
    const guard = listClosed(screen.guard ?? freshGuard, present());
    return { opening, screen: { ...screen, guard } };
  }
  if (screen.is !== 'bench') return { screen, opening };
  const chosen =
    select === undefined || select === screen.selected
      ? {}
      : { selected: select, part: null, before: screen.selected };
  const now = present();
  return { opening, screen: { ...screen, ...chosen, returnedAt: now, touchedAt: now } };
}

/** The pile with each of its screens changed, or not. */
const eachOn = (pile: Pile, change: (laid: Laid) => Laid): Pile => ({
  ...pile,
  top: change(pile.top),
  below: pile.below.map(change),
});

/** Selects a piece on the bench, which lies beneath. */
export const withSelected = (pile: Pile, piece: string): Pile =>
  eachOn(pile, (laid) =>
    laid.screen.is === 'bench'
      ? { ...laid, screen: { ...laid.screen, selected: piece, part: null } }
      : laid,
  );

/** What was loaded for a screen when it was opened, laid over what keys have done to it meanwhile. */
export const withLoaded = (pile: Pile, opened: Laid, loaded: Screen): Pile =>
  eachOn(pile, (laid) =>
    laid.opening === opened.opening
      ? { ...laid, screen: overlaid(laid.screen, opened.screen, loaded) }
      : laid,
  );

function overlaid(now: Screen, opened: Screen, loaded: Screen): Screen {
  const before = new Map(Object.entries(opened));
  const news = Object.entries(loaded).filter(([name, value]) => before.get(name) !== value);
  return { ...now, ...Object.fromEntries(news) };
}

/** The kinds of screens of which some were open before, and none is now. */
export function kindsClosed(before: Pile, now: Pile): readonly Screen['is'][] {
  const kinds = ({ top, below }: Pile) => new Set([...below, top].map(({ screen }) => screen.is));
  const open = kinds(now);
  return [...kinds(before)].filter((kind) => !open.has(kind));
}
