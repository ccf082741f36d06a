import {
  begunInHand,
  sessionHolding,
  standingsAt,
  type Standing,
} from '../../tracker/bench/index.ts';
import { minute } from '../../tracker/time/index.ts';
import { visible } from '../drawing/visible.ts';
import { lengthAloud } from '../format/index.ts';
import { callingLoudly, type PlainInput } from './plain-input.ts';
import { standingWords } from './standing-words.ts';

/**
 * The bench for a screen reader: a sentence for each piece, one to a line, what is lost first coming first. Nothing in it
 * changes more often than once a minute, so that it doesn't talk for ever.
 */
export function spokenBench(input: PlainInput): string {
  const { bench, now, sense, obstacle } = input;
  const rows = standingsAt(bench, now, sense);
  const told = [
    ...(obstacle === null ? [] : [`${obstacle.says} ${obstacle.todo}`]),
    ...callingLoudly(input).map(({ text }) => `Loud: ${text}`),
    ...(rows.length === 0 ? ['The bench is empty.'] : rows.map((row) => sentence(row, input))),
  ];
  return told.map((line) => aloud(visible(line))).join('\n');
}

/** `2 Plant stand, varnish coat 1: try it till 18:30, 4 hours 1 minute left; after 18:30 scuff 320 first. Not in hand.` */
function sentence(standing: Standing, input: PlainInput): string {
  const { number, name, step, state, when, counts, then } = standingWords(standing, input);
  const who = `${number} ${name}`.trim();
  const length =
    counts === null
      ? ''
      : `, ${coarsely(Math.abs(counts.at - input.now))}${counts.up ? '' : ' left'}`;
  const after = then === '' ? '' : `; ${then}`;
  const head = step === '' ? who : `${who}, ${step}`;
  return `${head}: ${`${state} ${when}`.trim()}${length}${after}.${handWords(standing, input)}`;
}

function handWords(standing: Standing, { bench }: PlainInput): string {
  const { piece, rank } = standing;
  if (piece === null || (rank === 'in hand' && begunInHand(standing) === null)) return '';
  return sessionHolding(bench, piece.id) === null ? ' Not in hand.' : ' In hand.';
}

const coarsely = (ms: number): string =>
  ms < minute ? 'less than a minute' : lengthAloud(Math.floor(ms / minute) * minute);

/** Clock times without the colon, which is spoken as one. */
const aloud = (text: string): string => text.replaceAll(/\b(\d{1,2}):(\d{2})\b/g, '$1 $2');
