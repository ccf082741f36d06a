import { windowsOfPot, type Pot, type PingSense } from '../../tracker/bench/index.ts';
import type { Instant } from '../../tracker/time/index.ts';
import { whenInWords, windowWords } from '../format/index.ts';
import type { Shop } from '../port.ts';

/** `mixed 10:05, pot lasts till 14:05` */
export function potStands(
  pot: Pot,
  { now, snapshot }: { readonly now: Instant; readonly snapshot: { sense: PingSense; shop: Shop } },
): string {
  const { sense, shop } = snapshot;
  const told = windowsOfPot(pot, sense).map((window) => {
    const { words, at } = windowWords(window, now, shop);
    return at === null ? words : `${words} ${whenInWords(at, now, shop)}`;
  });
  return [`mixed ${whenInWords(pot.mixedAt, now, shop)}`, ...told].join(', ');
}
