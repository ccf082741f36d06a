import { dateLine } from '../bench/date-line.ts';
import { loudPings } from '../bench/head.ts';
import type { BenchState } from '../bench/bench-state.ts';
import { fitLine, lineOf, type Line } from '../drawing/index.ts';
import { wrapWords } from '../drawing/wrap.ts';
import { helpLine, keyMapWith, type Act } from '../keys/key-map.ts';
import { page } from '../page.ts';
import { messageLines } from '../parts/message-lines.ts';
import { keeperPings } from '../parts/who-pings.ts';
import type { Frame, View } from '../screen.ts';
import { offersOf, offerOf, offerWords } from './offers.ts';

/** As many as fit, from the first. */
const helped: readonly Act[] = [
  'add',
  'all keys',
  'leave',
  'past pieces',
  'settings',
  'conditions',
];

/** The bench with nothing on it: what to do, in three lines, and what can be done from here. */
export function emptyBench(state: Pick<BenchState, 'offer'>, view: View): Frame {
  const { columns, rows, snapshot } = view;
  const wrapped = (text: string): readonly Line[] =>
    wrapWords(text, columns).map((line) => lineOf(line));
  const blank = [lineOf('')];
  const marked = offerOf(state, view);
  const offers = offersOf(view).flatMap((offer, index) =>
    wrapWords(offerWords[offer], columns - 6).map((text, line) =>
      lineOf(
        `  ${line > 0 ? '    ' : `${offer === marked ? '>' : ' '} ${index + 1} `}${text}`,
        offer === marked ? 'strong' : 'text',
      ),
    ),
  );
  const told = [
    ...wrapped('Add a piece: a name and a finishing schedule will do.'),
    ...wrapped('Pick it up and its minutes run; put a coat on and its window shows here.'),
  ];
  const ways = wrapWords(
    [
      ...(view.pingWays === undefined ? [] : [view.pingWays.says]),
      `While recoat is closed ${keeperPings(view) ? 'the keeper' : 'nothing'} pings.`,
    ].join(' '),
    columns,
  ).map((line) => lineOf(line, 'quiet'));
  const notice = snapshot.notices.at(-1);
  const keys = keyMapWith(snapshot.settings.keys);
  const foot = [
    ...(notice === undefined
      ? []
      : wrapWords(notice, columns).map((line) => lineOf(line, 'quiet'))),
    ...messageLines(view),
    lineOf(`Enter that one  ${helpLine(keys, helped, columns - 16)}`, 'quiet'),
  ];
  const head = [dateLine(view, []), loudLine(view)];
  const title = lineOf('The bench is empty.', 'strong');
  const whole = [...head, title, ...blank, ...told, ...blank, ...offers, ...blank, ...ways];
  const room = rows - foot.length;
  // Where rows lack, what can be done stays.
  const body = whole.length <= room ? whole : [...head, title, ...offers, ...ways, ...told];
  return { lines: page(body, foot, view) };
}

function loudLine(view: View): Line {
  const loud = loudPings(view)[0];
  if (loud === undefined) return lineOf('');
  return fitLine(lineOf(`!! ${loud.text}`, 'loud'), view.columns, view.theme.glyphs, 'loud');
}
