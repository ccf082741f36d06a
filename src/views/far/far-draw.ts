import { sessionHolding, type Standing } from '../../tracker/bench/index.ts';
import { closesAt, opensAt, stateAt } from '../../tracker/windows/index.ts';
import { largeFigures, lineOf, type Line } from '../drawing/index.ts';
import { callWords, clock, minutesSpent, thenWords, timeLeft } from '../format/index.ts';
import type { BenchRows } from '../bench/bench-state.ts';
import { dateLine, loudPings } from '../bench/head.ts';
import type { Frame, View } from '../screen.ts';

const tenMinutes = 600_000;

/** The bench for somebody across the shop: what needs hands first, its clock time and its count-down, several lines tall. */
export function drawFar(rows: BenchRows, view: View): Frame {
  const { now } = view;
  const timed = rows.all.flatMap((standing) => {
    const at = decisive(standing, now);
    return at === null ? [] : [{ standing, at }];
  });
  const [first, second] = timed.toSorted(
    (a, b) => weight(a.standing) - weight(b.standing) || a.at - b.at,
  );
  const foot = footOf(rows, view);
  const body: Line[] = [dateLine(view), lineOf('')];
  if (first === undefined) {
    body.push(lineOf('   Nothing is running.', 'strong'));
  } else {
    const urgent = first.at - now <= tenMinutes && weight(first.standing) < 2;
    body.push(...big(first, view, urgent ? 5 : 3));
    if (second !== undefined && body.length + 6 <= view.rows - foot.length)
      body.push(lineOf(''), ...big(second, view, 3));
  }
  const gap = Array.from({ length: Math.max(0, view.rows - body.length - foot.length) }, () =>
    lineOf(''),
  );
  const ticking = first !== undefined && first.at > now && first.at - now <= tenMinutes;
  return { lines: [...body.slice(0, view.rows - foot.length), ...gap, ...foot], ticking };
}

type Timed = { readonly standing: Standing; readonly at: number };

/** Number and verb, then the count-down beside its clock time, then a sentence. */
function big({ standing, at }: Timed, view: View, height: 3 | 5): readonly Line[] {
  const { window, piece, timer } = standing;
  if (window === null) return [];
  const { glyphs } = view.theme;
  const { shop } = view.snapshot;
  const role = weight(standing) === 0 ? 'spoils' : weight(standing) === 1 ? 'work lost' : 'strong';
  const number = piece === null ? '-' : String(piece.number);
  const verb =
    stateAt(window, view.now) === 'before' && window.rule.kind === 'coat'
      ? 'try it'
      : window.rule.verb;
  const lines: Line[] = [];
  const name = largeFigures(`${number} ${verb}`, 3, glyphs);
  const count = largeFigures(timeLeft(at, view.now, shop).replace(/ ?min$/, ''), height, glyphs);
  const by = largeFigures(clock(at, shop), 3, glyphs);
  const wide = (rows: readonly string[]): number => Math.max(...rows.map((row) => row.length));
  const fits = 3 + wide(name) <= view.columns;
  if (fits) for (const row of name) lines.push(lineOf(`   ${row}`, role));
  else lines.push(lineOf(`   ${number} ${verb}`, role));
  lines.push(lineOf(''));
  const offset = Math.floor((count.length - by.length) / 2);
  const roomForBy = 3 + wide(count) + 8 + wide(by) <= view.columns;
  for (const [index, row] of count.entries()) {
    const beside = roomForBy ? (by[index - offset] ?? '') : '';
    const word = roomForBy && index - offset === 1 ? '  by  ' : '      ';
    lines.push(lineOf(`   ${row.padEnd(wide(count))}${beside === '' ? '' : word}${beside}`, role));
  }
  const name1 = piece === null ? (timer?.label ?? '') : `${number} ${piece.name}`;
  const then = thenWords(window, view.now, shop);
  lines.push(
    lineOf(''),
    lineOf(
      `   ${name1}: ${callWords(window, view.now, shop)}${then === '' ? '' : `; ${then}`}`,
      'strong',
    ),
  );
  return lines;
}

/** The edge that counts: a dwell's opening while it works, a closing while it is open, an opening while it dries. */
function decisive({ window }: Standing, now: number): number | null {
  if (window === null) return null;
  if (stateAt(window, now) === 'before') return opensAt(window);
  const closing = closesAt(window, now);
  return closing === null || stateAt(window, now) === 'late' ? null : closing.at;
}

const weight = ({ rank }: Standing): number =>
  rank === 'spoils' ? 0 : rank === 'costs work' ? 1 : 2;

function footOf({ selected }: BenchRows, view: View): readonly Line[] {
  const loud = loudPings(view)[0];
  const { message } = view;
  const piece = selected?.piece ?? null;
  const held = piece === null ? null : sessionHolding(view.snapshot.bench, piece.id);
  const inHand = held === null ? '' : `, in hand ${minutesSpent(view.now - held.start)}`;
  return [
    piece === null
      ? lineOf('')
      : lineOf(`keys act on [${piece.number}] ${piece.name}${inHand}`, 'quiet'),
    loud !== undefined
      ? lineOf(`!! ${loud.text}`, 'loud')
      : lineOf(
          message?.text ?? 'Any key brings the bench back.',
          message === null ? 'quiet' : 'strong',
        ),
  ];
}
