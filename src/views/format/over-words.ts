import type { OverRow } from '../../tracker/trade/index.ts';
import { lengthAloud } from './lengths.ts';

/** `yes`, `no`, `only after it is dry, 24 h at the least`. */
export function verdictWords({ verdict, first, wait }: OverRow): string {
  if (verdict !== 'after' || first === undefined) return verdict;
  const what = {
    dry: 'it is dry',
    scuffed: 'it is scuffed dull',
    'a step between': 'a step between',
    judgement: 'a look',
  }[first];
  return `only after ${what}${wait === undefined ? '' : `, ${lengthAloud(wait)} at the least`}`;
}
