import { missedAfter, type BenchPing, type Sending } from '../../tracker/bench/index.ts';
import type { Instant } from '../../tracker/time/index.ts';
import { capital, whenInWords, type ShopClock } from '../format/index.ts';
import { holdCall } from './hold-ping.ts';
import { missedPing } from './missed.ts';
import { whoFor } from './who.ts';
import { callOf } from './window-ping.ts';

/** A ping in words. `text` is title and body in one, for the screen and the log: its first sentence is the title. */
export type PingText = { readonly title: string; readonly body: string; readonly text: string };

/** More than this would push the first out of sight. */
const mostTold = 6;

const worstFirst = 'Worst:';

/**
 * What one sending says: number, name and verb first, the clock time, what is lost, one rescue, the gear. Pings that fell
 * together are told worst first; those that were missed as a summary of how they stand now.
 *
 * @param since when this process began to watch: what was due before, nothing was there to send
 * @param asleepFrom when this process was last there before the machine fell asleep or the process was stopped, if it
 *   did since its last look
 */
export function pingText(
  sending: Sending,
  now: Instant,
  shop: ShopClock,
  since: Instant,
  asleepFrom?: Instant,
): PingText {
  const { pings, lateBy } = sending;
  const isMissed = lateBy > missedAfter;
  if (isMissed && pings.some((ping) => ping.at < since)) {
    const title = 'While recoat was closed';
    const body = summary(pings, now, shop);
    const goesOn = body.startsWith(worstFirst) ? `, w${body.slice(1)}` : `: ${body}`;
    return { title, body, text: title + goesOn };
  }
  if (isMissed && asleepFrom !== undefined) {
    const [from, to] = [whenInWords(asleepFrom, now, shop), whenInWords(now, now, shop)];
    return joined(`Asleep or stopped ${from} to ${to}`, summary(pings, now, shop));
  }
  // It was there all the time: what began the window was told later than it was.
  if (isMissed) {
    const [worst = '', ...rest] = pings.map((ping) => missedPing(ping, now, shop));
    return joined(worst, capped(rest).map(sentence).join(' '));
  }
  const [first, ...others] = pings.map((ping) => told(ping, now, shop));
  if (first === undefined) return { title: '', body: '', text: '' };
  return joined(
    first.title,
    [...first.more, ...capped(others.map(({ title }) => title))].map(sentence).join(' '),
  );
}

const remarked = ({ title, body, text }: PingText, remark: string): PingText => ({
  title,
  body: body === '' ? remark : `${body} ${remark}`,
  text: `${body === '' ? sentence(text) : text} ${remark}`,
});

/** The same, told again because whoever was to send it may have ended before it did. */
export const toldAgain = (text: PingText): PingText => remarked(text, 'Perhaps told before.');

/** The same where nothing can be put on record, so that another process can't know of it. */
export const perhapsTwice = (text: PingText): PingText =>
  remarked(text, 'Not on record: perhaps told twice.');

function told(
  ping: BenchPing,
  now: Instant,
  shop: ShopClock,
): { readonly title: string; readonly more: readonly string[] } {
  const call = ping.about === 'hold' ? holdCall(ping) : callOf(ping, now, shop);
  return { title: `${whoFor(ping, call.verb)}: ${call.says}`, more: call.more };
}

function summary(pings: readonly BenchPing[], now: Instant, shop: ShopClock): string {
  const all = pings.map((ping) => missedPing(ping, now, shop));
  const worst = all.length > 1 ? `${worstFirst} ${all[0] ?? ''}` : (all[0] ?? '');
  return [worst, ...capped(all.slice(1))].map(sentence).join(' ');
}

const capped = (all: readonly string[]): readonly string[] =>
  all.length <= mostTold
    ? all
    : [...all.slice(0, mostTold), `and ${all.length - mostTold} more on the bench`];

const joined = (title: string, body: string): PingText => ({
  title,
  body,
  text: body === '' ? title : `${title}. ${body}`,
});

/** `late: rinse` becomes `Late: rinse.` */
const sentence = (text: string): string => capital(text) + (text.endsWith('.') ? '' : '.');
