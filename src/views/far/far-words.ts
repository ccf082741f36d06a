import { labelOf } from '../../tracker/bench/index.ts';
import { minute, second } from '../../tracker/time/index.ts';
import { stateAt, stretchAt } from '../../tracker/windows/index.ts';
import { noBreak, wrapKept, wrapWords } from '../drawing/wrap.ts';
import { callWords, capital, clock, timeLeft, timeLeftOf, whenInWords } from '../format/index.ts';
import { kindWords } from '../format/kind-words.ts';
import { calledPart } from '../parts/called-piece.ts';
import { callOf } from '../ping-text/window-ping.ts';
import type { View } from '../screen.ts';
import type { FarCall } from './what-calls.ts';

/** `3 Beech stool: try it from 15:10, 41 min` */
export function calmSentence(
  call: FarCall,
  { now, snapshot }: View,
  cells: number,
): readonly string[] {
  const { shop } = snapshot;
  // A figure stays on the line of its unit.
  const left = call.at === null ? '' : timeLeftOf(call.at - now).replaceAll(' ', noBreak);
  const text = `${nameOf(call)}: ${callWords(call.window, now, shop)}${left === '' ? '' : `, ${left}`}`;
  return wrapKept(text, cells);
}

const nameOf = ({ standing, window }: FarCall): string =>
  standing.piece === null ? labelOf(standing) : calledPart(standing.piece, window.subject.partId);

/** The number that keys know, and what there is to do. */
export function names({ standing, window }: FarCall): {
  readonly number: string;
  readonly verb: string;
} {
  const { piece, timer } = standing;
  const { call } = kindWords(window);
  const verb = timer === null && window.rule.kind !== 'timer' ? call : 'time is up';
  return { number: piece === null || piece.number === null ? '-' : String(piece.number), verb };
}

/** What is left and until when; of what is lost, since when. */
export function countdown(
  { window, at, isLost }: FarCall,
  { now, snapshot }: View,
): { readonly count: string; readonly word: string; readonly by: string } {
  const { shop } = snapshot;
  if (at === null && !isLost) return { count: 'now', word: '', by: '' };
  if (at === null)
    return { count: 'late', word: 'since', by: clock(stretchAt(window, now).begins, shop) };
  const word = stateAt(window, now) === 'before' ? 'at' : 'by';
  const count = at - now < tenMinutes ? minutesAndSeconds(at - now) : timeLeft(at, now, shop);
  return { count, word, by: clock(at, shop) };
}

const tenMinutes = 10 * minute;

/** `9:05`; rounded up, so that 0:00 comes when it is over. */
function minutesAndSeconds(ms: number): string {
  const seconds = Math.max(0, Math.ceil(ms / second));
  return `${Math.floor((seconds * second) / minute)}:${String(seconds % 60).padStart(2, '0')}`;
}

/** The name with what there is to do, what comes after, the gear, and when it began. */
export function sentences(
  call: FarCall,
  { now, snapshot }: View,
  cells: number,
): readonly string[] {
  const { window, isLost } = call;
  const { shop } = snapshot;
  const { says, more } = callOf({ window, reason: 'soon' }, now, shop);
  const told = [
    `${nameOf(call)}: ${isLost ? says : callWords(window, now, shop)}`,
    ...more,
    `began ${whenInWords(window.begunAt, now, shop)}`,
  ];
  return wrapWords(told.map(sentence).join(' '), cells);
}

const sentence = (text: string): string => `${capital(text)}.`;
