import type { Instant } from '../../tracker/time/index.ts';
import type { StampChoice, StampEvent } from '../../tracker/windows/index.ts';
import type { EdgeReason } from '../../tracker/windows/index.ts';
import { whenInWords } from '../format/index.ts';
import { labelLength } from '../parts/label-length.ts';
import type { Shop } from '../port.ts';
import { spanWords } from './span-words.ts';

const eventWords: Readonly<Record<StampEvent, string>> = {
  'first-stroke': 'first stroke',
  'last-stroke': 'last stroke',
  'section-on': 'section on',
  'section-off': 'section off',
  'topped-up': 'topped up',
  covered: 'covered',
  uncovered: 'uncovered',
  mixed: 'mixed',
  'in-clamps': 'in clamps',
  'clamps-off': 'clamps off',
  turned: 'turned',
  'washed-out': 'washed out',
};

/** `label 2 h x 1.9 for 15 C 65 %, from last stroke 11:22`: a figure and where it comes from. */
export function edgeWords({ root, spans }: EdgeReason, now: Instant, shop: Shop): string {
  const when = whenInWords(root.at, now, shop);
  switch (root.by) {
    case 'clock':
      return `at ${root.time}`;
    case 'check':
      return root.finding === 'ready'
        ? `found ready ${when}`
        : `not yet at ${when}, ${spans.map(({ span }) => `${labelLength(span.ms)} more`).join(', ')}`;
    case 'stamp': {
      const from = root.assumed ? `pick-up ${when}, assumed` : `${chosen(root.choice)} ${when}`;
      const figures = spans.map((span) => spanWords(span, now, shop)).join(', then ');
      return figures === '' ? `from ${from}` : `label ${figures}, from ${from}`;
    }
  }
}

function chosen({ events, agent }: StampChoice): string {
  const words = events.map((event) => eventWords[event]).join(' or ');
  return agent === undefined ? words : `${agent} ${words}`;
}
