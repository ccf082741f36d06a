import type { BenchPing } from '../../tracker/bench/index.ts';
import type { Instant } from '../../tracker/time/index.ts';
import { stateAt, stretchAt } from '../../tracker/windows/index.ts';
import type { ShopClock } from '../format/index.ts';
import { holdCall } from './hold-ping.ts';
import { whoFor } from './who.ts';
import { ago, callOf } from './window-ping.ts';

/** One ping of a summary, told as it stands now and how long that has been so: `2 Plant stand: wipe off, late since 13:20, 50 min ago: ...` */
export function missedPing(ping: BenchPing, now: Instant, shop: ShopClock): string {
  if (ping.about === 'hold') return `${whoFor(ping, 'ask about')}: ${holdCall(ping).says}`;
  const { verb, says, more } = callOf(ping, now, shop);
  const { window } = ping;
  const stretch = stretchAt(window, now);
  const who = whoFor(ping, verb);
  const since = ago(now - stretch.begins);
  switch (stateAt(window, now)) {
    case 'open':
    case 'closing':
      return says.includes(' since ')
        ? `${who}: ${says}, ${since}`
        : `${who}: ${says}, opened ${since}`;
    case 'barred':
      return `${who}: ${says}, began ${since}`;
    case 'late':
      return `${who}: ${says}, ${since}${stretch.meaning === 'late' && more[0] !== undefined ? `: ${more[0]}` : ''}`;
    case 'before':
    case 'done':
      return `${who}: ${says}`;
  }
}
