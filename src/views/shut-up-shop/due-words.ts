import type { Due } from '../../tracker/overnight/index.ts';
import { whenInWords, type ShopClock } from '../format/index.ts';
import { kindWords } from '../format/kind-words.ts';
import { losingEnd } from '../format/outlook.ts';
import type { Instant } from '../../tracker/time/index.ts';

/** What happens at an edge, and what it costs: `try it ends: scuff 320 first`. */
export function dueWords({ window, ends, begins }: Due, now: Instant, shop: ShopClock): string {
  const { call } = kindWords(window);
  const { kind, verb } = window.rule;
  const says = begins.says ?? '';
  switch (begins.meaning) {
    case 'go': {
      const end = losingEnd(window, begins.begins);
      const then =
        end === null ? 'nothing lost by waiting' : `open to ${whenInWords(end, now, shop)}`;
      const opens = kind === 'timer' ? `${verb}, timer up` : call;
      return ends.meaning === 'keep off' ? `keep off ends; ${then}` : `${opens}; ${then}`;
    }
    case 'go after work':
      return `${call} ends: ${says === '' ? 'it costs extra work' : says}`;
    case 'keep off': {
      const till = begins.ends === null ? '' : `, till ${whenInWords(begins.ends, now, shop)}`;
      return `keep off begins${till}${says === '' ? '' : `; ${says}`}`;
    }
    case 'late':
      return begins.loss === 'spoils'
        ? `${call} ends, spoils: ${says === '' ? 'start over' : says}`
        : `${call} ends${says === '' ? '' : `: ${says}`}`;
    case 'wait':
      return `${call} ends`;
  }
}
