import type { Sending } from '../../tracker/bench/index.ts';
import type { Instant } from '../../tracker/time/index.ts';
import { callWords } from '../format/index.ts';
import type { Shop } from '../port.ts';

export function pingText(sending: Sending, now: Instant, shop: Shop, _since: Instant): { title: string; body: string; text: string } {
  const text = sending.pings
    .map((ping) => (ping.about === 'window' ? `${ping.piece?.number} ${ping.piece?.name}: ${callWords(ping.window, now, shop)}` : `${ping.piece.name}`))
    .join('. ');
  return { title: text, body: '', text };
}
