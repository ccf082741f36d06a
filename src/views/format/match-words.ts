import {
  batchWords,
  type DwellTarget,
  type MatchDifference,
  type MatchFinding,
} from '../../tracker/bench/index.ts';
import { minute, type Milliseconds } from '../../tracker/time/index.ts';
import { timeLeftOf } from './lengths.ts';

/** A piece as a row has room for it: by its number, by its name once it has left the bench. */
export const matchName = ({ name, partner }: MatchFinding): string =>
  String(partner?.number ?? name);

/** `4 has 3 coats, this 2; A stood 6 min on 4, 11 min here`, or that nothing differs. */
export function matchWords(finding: MatchFinding): string {
  const who = matchName(finding);
  const called = who === finding.name ? who : `${who} ${finding.name}`;
  if (finding.partner === null) return `${called}, which is not at hand to compare`;
  const { differences } = finding;
  if (differences.length === 0) return `${called}: nothing differs so far`;
  return `${called}: ${differences.map((each) => differenceWords(each, who)).join('; ')}`;
}

/** One difference from the piece called `who`. */
export function differenceWords(difference: MatchDifference, who: string): string {
  switch (difference.what) {
    case 'product':
      return `${difference.step}: ${difference.there} on ${who}, ${difference.here} here`;
    case 'batch':
      return batchWords(difference, who);
    case 'coats': {
      const { product, there, here, toCome } = difference;
      const of = product === null ? '' : ` of ${product}`;
      return `${who} ${toCome ? 'gets' : 'has'} ${counted(there, 'coat')}${of}, this ${here}`;
    }
    case 'rounds':
      return `${difference.step}: ${counted(difference.there, 'round')} on ${who}, ${difference.here} here`;
    case 'dwell': {
      const { stood, there, here } = difference;
      return `${stood} stood ${stoodFor(there)} on ${who}, ${stoodFor(here)} here`;
    }
    case 'step': {
      const { step, lacks, skipped } = difference;
      const [with_, without] = lacks === 'here' ? [who, 'here'] : ['here', `on ${who}`];
      const had = lacks === 'here' ? `${with_} had ${step}` : `${step} was done ${with_}`;
      return `${had}, ${skipped ? 'skipped' : 'not'} ${without}`;
    }
  }
}

/** `match 4: 6:20`, and what the label says to it. */
export function dwellTargetWords({ partner, ms, pastLabel }: DwellTarget): string {
  const told = `match ${partner.number ?? partner.name}: ${timeLeftOf(ms)}`;
  return pastLabel ? `${told}, longer than the label: label first` : told;
}

const stoodFor = (ms: Milliseconds): string => `${Math.round(ms / minute)} min`;

const counted = (count: number, what: string): string =>
  `${count} ${what}${count === 1 ? '' : 's'}`;
