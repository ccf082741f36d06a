import type { StampChoice, StampEvent } from '../../tracker/windows/index.ts';
import type { CountedSpan, EdgeReason } from '../../tracker/windows/index.ts';
import { air, whenInWords } from '../format/index.ts';
import { labelLength } from '../parts/label-length.ts';
import type { View } from '../screen.ts';

const eventWords: Readonly<Record<StampEvent, string>> = {
  'first-stroke': 'first stroke',
  'last-stroke': 'last stroke',
  'section-on': 'section on',
  'section-off': 'section off',
  'topped-up': 'topped up',
  covered: 'covered',
  mixed: 'mixed',
  'in-clamps': 'in clamps',
  'clamps-off': 'clamps off',
  turned: 'turned',
  'washed-out': 'washed out',
};

/** `label 2 h x 1.9 for 15 C 65 %, from last stroke 11:22`: a figure and where it comes from. */
export function edgeWords({ root, spans }: EdgeReason, view: View): string {
  const when = whenInWords(root.at, view.now, view.snapshot.shop);
  switch (root.by) {
    case 'clock':
      return `at ${root.time}`;
    case 'check':
      return root.finding === 'ready'
        ? `found ready ${when}`
        : `not yet at ${when}, ${spans.map(({ span }) => `${labelLength(span.ms)} more`).join(', ')}`;
    case 'stamp': {
      const from = root.assumed ? `pick-up ${when}, assumed` : `${chosen(root.choice)} ${when}`;
      const figures = spans.map((span) => spanWords(span, view)).join(', then ');
      return figures === '' ? `from ${from}` : `label ${figures}, from ${from}`;
    }
  }
}

function chosen({ events, agent }: StampChoice): string {
  const words = events.map((event) => eventWords[event]).join(' or ');
  return agent === undefined ? words : `${agent} ${words}`;
}

/** The label's figure, and how many times that it came to in the shop's air. */
function spanWords({ span, lasts }: CountedSpan, { snapshot }: View): string {
  const factor = span.ms === 0 ? 1 : lasts / span.ms;
  if (Math.abs(factor - 1) < 0.05) return labelLength(span.ms);
  const reading = snapshot.readings.at(-1);
  const forAir = reading === undefined ? '' : ` for ${air(reading, snapshot.shop.temperature)}`;
  return `${labelLength(span.ms)} x ${factor.toFixed(1)}${forAir}`;
}
