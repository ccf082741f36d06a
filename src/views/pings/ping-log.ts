import { pingsOfBench, type BenchPing } from '../../tracker/bench/index.ts';
import { fitEnd, lineOf, segment, type Line } from '../drawing/index.ts';
import { wrapWords } from '../drawing/wrap.ts';
import { clockCells, clockOrDay, noonAfterNight, whenInWords } from '../format/index.ts';
import { firstSentence } from '../format/first-sentence.ts';
import { heading } from '../parts/heading.ts';
import { keyHints } from '../parts/key-hints.ts';
import { messageLines } from '../parts/message-lines.ts';
import { keeperPings } from '../parts/who-pings.ts';
import { pingText } from '../ping-text/index.ts';
import type { ScrolledPage } from '../page.ts';
import type { ShownPing, Snapshot } from '../port.ts';
import type { View } from '../screen.ts';
import { noticedLines } from './noticed.ts';

/** The file in which every ping is written down as it goes out, beside the data. */
export const logFile = 'ping-diagnostics.log';

/** More of what is still to come is only counted. */
const mostToCome = 8;

/** Older ones stand in the file. */
const mostOfLog = 200;

/** A day, after a clock: ` 14 Dec`. */
const dayCells = 7;

/** What pinged and what will, so that one that was missed can be explained. */
export function pingLog(from: number, view: View): ScrolledPage {
  const { columns, snapshot } = view;
  const log = snapshot.pings.slice(-mostOfLog).toReversed();
  const explained = [
    ...(view.pingWays === undefined ? [] : [view.pingWays.says]),
    ...keeperLine(snapshot.keeper),
    ...(snapshot.awake === null ? [] : [snapshot.awake.says]),
    ...(snapshot.awake?.closing === undefined ? [] : [snapshot.awake.closing]),
    ...(snapshot.folder === null ? [] : [`All of it: ${logFile} in ${snapshot.folder}`]),
  ];
  return {
    head: heading(lineOf('pings: to come, and what it did', 'strong'), view),
    body: [
      ...toCome(view),
      ...noticedLines(view),
      lineOf(''),
      lineOf('went out, the last one first', 'quiet'),
      ...(log.length === 0
        ? [lineOf('  None so far.')]
        : log.flatMap((ping) => wentOut(ping, view))),
      lineOf(''),
      ...explained.flatMap((text) => quiet(text, columns)),
    ],
    foot: [...messageLines(view), ...keyHints(['up, down: more', 'Esc: back'], columns, 3)],
    from,
  };
}

const keeperLine = (keeper: Snapshot['keeper']): readonly string[] =>
  keeper === 'there' ? ['Keeper: stands by, and pings once no screen is open.'] : [];

const quiet = (text: string, columns: number): readonly Line[] =>
  wrapWords(text, columns).map((line) => lineOf(line, 'quiet'));

/** Until the noon after the coming night, in the words in which they will go out. */
function toCome(view: View): readonly Line[] {
  const { now, snapshot } = view;
  const { bench, sense, shop } = snapshot;
  const till = noonAfterNight(now, shop.zone);
  const due = pingsOfBench(bench, now, sense).filter((ping) => ping.at > now && ping.at <= till);
  const title = `to come till ${whenInWords(till, now, shop)}`;
  const shown = due.slice(0, mostToCome).flatMap((ping) => {
    const words = wordsOf(ping, view);
    return entry(ping.at, ping.loud, [words], view);
  });
  const more = due.length > mostToCome ? [lineOf(`  and ${due.length - mostToCome} more`)] : [];
  return [
    lineOf(title, 'quiet'),
    ...(due.length === 0 ? [lineOf('  None.')] : shown),
    ...more,
    ...quiet(
      `While recoat is closed ${keeperPings(view) ? 'the keeper pings these' : 'none of these goes out'}.`,
      view.columns,
    ),
  ];
}

const wordsOf = (ping: BenchPing, { snapshot }: View): string =>
  pingText({ pings: [ping], settles: [], loud: ping.loud, lateBy: 0 }, ping.at, snapshot.shop, 0)
    .title;

const wentOut = (ping: ShownPing, view: View): readonly Line[] =>
  entry(ping.at, ping.loud, [ping.text, howItWent(ping, view)], view);

function howItWent({ ways, failures, seenAt, loud }: ShownPing, { now, snapshot }: View): string {
  const how =
    ways === null
      ? 'Not known whether it went out: recoat ended while sending it'
      : ways.length === 0
        ? 'went out by nothing'
        : `by ${ways.join(', ')}`;
  const seen =
    seenAt === null
      ? loud
        ? 'no key has silenced it'
        : null
      : `seen ${whenInWords(seenAt, now, snapshot.shop)}`;
  return [how, ...failures.map(withoutAdvice), ...(seen === null ? [] : [seen])].join('; ');
}

/** What to do about it is said once, when it is first noticed. */
const withoutAdvice = (failure: string): string => firstSentence(failure).replace(/\.$/, '');

/** When, and beside it the texts; the first as it was said, the others quiet. */
function entry(
  at: number,
  isLoud: boolean,
  texts: readonly string[],
  { now, columns, snapshot }: View,
): readonly Line[] {
  const { shop } = snapshot;
  const isNarrow = columns < 60;
  const cells = isNarrow ? 4 : clockCells(shop) + dayCells + 4;
  const when = clockOrDay(at, now, shop);
  const mark = isLoud ? '!! ' : '   ';
  const [said = '', ...more] = texts;
  const first = wrapWords(isNarrow ? `${when}  ${said}` : said, columns - cells);
  const lines = first.map((text, index) => [
    segment(
      index > 0
        ? ' '.repeat(cells)
        : isNarrow
          ? ` ${mark}`
          : `${mark}${fitEnd(when, cells - mark.length)}`,
      isLoud ? 'strong' : 'text',
    ),
    segment(text, isLoud ? 'strong' : 'text'),
  ]);
  const under = more.flatMap((text) =>
    wrapWords(text, columns - cells).map((line) => lineOf(' '.repeat(cells) + line, 'quiet')),
  );
  return [...lines, ...under];
}
