import { inHand, labelOf, lastTouched, type Standing } from '../../tracker/bench/index.ts';
import type { Instant } from '../../tracker/time/index.ts';
import { closesAt, opensAt, stateAt } from '../../tracker/windows/index.ts';
import { cut, fitLine, largeFigures, lineOf, segment, width, type Line } from '../drawing/index.ts';
import { wrapWords } from '../drawing/wrap.ts';
import { callWords, timeLeft } from '../format/index.ts';
import type { ShownPing } from '../port.ts';
import { calledPart } from '../parts/called-piece.ts';
import type { View } from '../screen.ts';
import type { BenchRows } from './bench-rows.ts';
import { inHandLine } from './in-hand-line.ts';
import { nextCalls } from './next-calls.ts';

const tenMinutes = 600_000;
const quietPingStands = 60_000;

/** Rows 2 and 3: what calls, else what is next; row 4: what is in hand. Large figures at their right while something is short. */
export function callLines(
  rows: BenchRows,
  view: View,
): { readonly lines: readonly Line[]; readonly ticking: boolean } {
  const large = largeCountdown(rows.all, view);
  const cells = large === null ? view.columns : view.columns - (large[0]?.length ?? 0) - 1;
  const calls = [...pingLines(view, cells), ...nextLines(rows, view, cells)];
  const lines = [calls[0] ?? lineOf(''), calls[1] ?? lineOf(''), inHandLine(view, cells)];
  return {
    ticking: large !== null,
    lines: lines.map((line, index) => {
      const role = line[0]?.role === 'loud' ? 'loud' : 'text';
      const fitted = fitLine(line, cells, view.theme.glyphs, role);
      if (large === null) return fitted;
      return [
        ...fitted,
        segment(' ', role),
        segment(large[index] ?? '', role === 'loud' ? 'loud' : 'spoils'),
      ];
    }),
  };
}

/** Loud pings until a key is pressed, and a quiet one for a minute. */
function pingLines(view: View, cells: number): readonly Line[] {
  const [worst, other] = loudPings(view);
  if (worst !== undefined) {
    const [first, second] = inTwoRows(worst.text, cells - 3);
    const below = other === undefined ? second : sentences(other.text)[0];
    const above = other === undefined ? first : sentences(worst.text)[0];
    return [above?.replace(/\.$/, ''), below].map((told = '') => lineOf(`!! ${told}`, 'loud'));
  }
  const quiet = quietPing(view);
  if (quiet === undefined) return [];
  if (width(quiet.text) <= cells) return [lineOf(quiet.text, 'strong')];
  return inTwoRows(quiet.text, cells).map((told) => lineOf(told, 'strong'));
}

/** The last ping that is not loud, for a minute, or till its key was pressed or its piece seen to. */
export const quietPing = (view: View): ShownPing | undefined =>
  view.snapshot.pings.findLast(
    (ping) =>
      !ping.loud &&
      ping.seenAt === null &&
      view.now - ping.at < quietPingStands &&
      view.now >= ping.at &&
      !wasAnswered(ping, view),
  );

const sentences = (text: string): readonly string[] => text.split(/(?<=\.) /);

/** Broken after the first sentence where the others have room in one row, else where the row ends: what is lost comes last. */
function inTwoRows(text: string, cells: number): readonly [string, string] {
  const [first = '', ...rest] = sentences(text);
  if (width(first) <= cells && width(rest.join(' ')) <= cells) return [first, rest.join(' ')];
  const [above = '', ...below] = wrapWords(text, cells);
  return [above, below.join(' ')];
}

/** Whether something was recorded on the piece since: what it was pinged for has been seen to. */
function wasAnswered(ping: ShownPing, view: View): boolean {
  const piece = ping.piece === null ? undefined : view.snapshot.bench.pieces.get(ping.piece);
  // What was moved to before the ping was still told after it.
  return piece !== undefined && Math.max(lastTouched(piece), piece.movedAt ?? 0) > ping.at;
}

/** Loud pings that no key has silenced, worst (latest) first. */
export const loudPings = (view: View): readonly ShownPing[] =>
  view.snapshot.pings.filter((ping) => ping.loud && ping.seenAt === null).toReversed();

function nextLines(rows: BenchRows, view: View, cells: number): readonly Line[] {
  const { now, snapshot } = view;
  const called = nextCalls(rows.all, now).slice(0, 2);
  if (called.length > 0) {
    return called.map((standing, index) => {
      const isClosing = stateAt(standing.window, now) === 'closing';
      const told = callWords(standing.window, now, snapshot.shop);
      // A timer's label is its verb as well: it is called once.
      const words =
        standing.timer === null ? told : `timer${told.slice(standing.window.rule.verb.length)}`;
      const head =
        index === 0
          ? view.columns < 80
            ? 'next    '
            : 'next     '
          : ' '.repeat(view.columns < 80 ? 8 : 9);
      return [
        segment(head, 'quiet'),
        segment(callOf(standing, words, view, cells - head.length), isClosing ? 'strong' : 'text'),
      ];
    });
  }
  const waiting = rows.rows.find((standing) => standing.rank === 'waits');
  if (waiting === undefined || inHand(snapshot.bench).length > 0) return [];
  return [
    [
      segment(view.columns < 80 ? 'next    ' : 'next     ', 'quiet'),
      segment(`${calledRow(waiting)}: ${waiting.step?.name ?? ''}`),
    ],
  ];
}

/** Where room lacks the name is cut, never the time. */
function callOf(standing: Standing, words: string, view: View, cells: number): string {
  const room = Math.max(8, cells - width(words) - 2);
  return `${cut(calledRow(standing), room, view.theme.glyphs)}: ${words}`;
}

const calledRow = (row: Standing): string =>
  row.piece === null ? labelOf(row) : calledPart(row.piece, row.window?.subject.partId ?? null);

/** The count-down of what is lost first, in three rows, if that is within ten minutes; null otherwise. */
function largeCountdown(all: readonly Standing[], view: View): readonly string[] | null {
  const short = shortest(all, view.now);
  if (short === null || view.columns < 60) return null;
  return largeFigures(timeLeft(short.until, view.now, view.snapshot.shop), 3, view.theme.glyphs);
}

/** What is lost first within ten minutes: a closing that costs something, or the moment at which a dwell is to be followed. */
export function shortest(
  all: readonly Standing[],
  now: Instant,
): { readonly standing: Standing; readonly until: Instant } | null {
  const found = all.flatMap((standing) => {
    const until = decidingEdge(standing, now);
    return until !== null && until - now < tenMinutes ? [{ standing, until }] : [];
  });
  return found.toSorted((a, b) => a.until - b.until)[0] ?? null;
}

function decidingEdge({ window, rank }: Standing, now: Instant): Instant | null {
  if (window === null || (rank !== 'spoils' && rank !== 'costs work')) return null;
  if (stateAt(window, now) === 'before') return opensAt(window);
  return closesAt(window, now)?.at ?? null;
}
