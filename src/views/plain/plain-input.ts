import type { Bench, PingSense } from '../../tracker/bench/index.ts';
import type { Reading } from '../../tracker/trade/index.ts';
import type { Instant } from '../../tracker/time/index.ts';
import type { Obstacle, Shop, ShownPing, Snapshot } from '../port.ts';

/** All that the bench is told from where no screen is drawn. */
export type PlainInput = {
  readonly bench: Bench;
  readonly sense: PingSense;
  readonly shop: Shop;
  readonly readings: readonly Reading[];
  readonly pings: readonly ShownPing[];
  readonly obstacle: Obstacle | null;
  readonly keeper: Snapshot['keeper'];
  readonly now: Instant;
};

/** Pings that no key or command has silenced, the latest first. */
export const callingLoudly = ({ pings }: PlainInput): readonly ShownPing[] =>
  pings.filter((ping) => ping.loud && ping.seenAt === null).toReversed();
