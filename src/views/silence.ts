import type { Milliseconds } from '../tracker/time/index.ts';
import { loudPings } from './bench/head.ts';
import type { ShownPing } from './port.ts';
import type { View } from './screen.ts';

/** A key this soon after a loud ping began was meant for something else and still acts. */
const meantOtherwise: Milliseconds = 300;

/** The loud pings that a key pressed now silences, worst first; none where it was meant for something else. */
export function silencedNow(view: View): readonly ShownPing[] {
  const loud = loudPings(view);
  const worst = loud[0];
  return worst === undefined || view.now - worst.at < meantOtherwise ? [] : loud;
}

export const claimsOf = (pings: readonly ShownPing[]): readonly string[] =>
  pings.map(({ claim }) => claim);

export const silencedPressAgain = 'silenced, press again';
