import {
  fitEnd,
  lineOf,
  padEnd,
  segment,
  width,
  type GlyphSet,
  type Line,
} from '../drawing/index.ts';
import { wrapWords } from '../drawing/wrap.ts';
import {
  keyMapWith,
  keyOf,
  keyWord,
  type Act,
  type Binding,
  type KeyMap,
} from '../keys/key-map.ts';
import { heading } from '../parts/heading.ts';
import { messageLines } from '../parts/message-lines.ts';
import type { ScrolledPage } from '../page.ts';
import type { View } from '../screen.ts';
import { padLines, twoColumns } from './pad-lines.ts';

/** What is pressed with gloves on; all other acts stand beside it. */
const withGloves: readonly Act[] = [
  'next part',
  'pick up',
  'next stamp',
  'ready',
  'not yet',
  'trouble',
  'first stroke',
  'next section',
  'done',
  'other stamp',
  'earlier',
  'later',
  'take back',
  'bring back',
  'back to',
  'take along',
];

/** These are told in other lines of the sheet. */
const toldElsewhere: readonly Act[] = ['up', 'down', 'list', 'all keys'];

/** All keys and what they do, from the key map with the user's own keys in it. */
export function keysSheet(from: number, view: View): ScrolledPage {
  const keys = keyMapWith(view.snapshot.settings.keys);
  const { columns } = view;
  const title = 'keys: each acts on the selected piece; its number stands in [ ]';
  const [first = '', ...rest] = wrapWords(title, columns);
  const [head = lineOf(''), loud = lineOf('')] = heading(lineOf(first, 'strong'), view);
  const isCalling = loud[0]?.role === 'loud';
  return {
    head: [head, ...rest.map((line) => lineOf(line, 'strong')), ...(isCalling ? [loud] : [])],
    body: [
      ...acts(keys, view),
      // In 24 rows every line is needed.
      ...(view.rows > 24 || columns < twoColumns ? [lineOf('')] : []),
      ...padLines(keys, columns),
      ...guards(keys).flatMap((line) => quiet(line, columns)),
    ],
    foot: [...messageLines(view), lineOf(`Esc or ${keyOf(keys, 'all keys')}: back`, 'quiet')],
    from,
  };
}

const quiet = (text: string, columns: number): readonly Line[] =>
  wrapWords(text, columns).map((line) => lineOf(line, 'quiet'));

type Entry = { readonly keys: string; readonly says: string; readonly short: string };

const entryOf = ({ keys, says, short }: Binding): Entry => ({
  keys: keys.length === 0 ? '(no key)' : keys.map(keyWord).join(' or '),
  says,
  // Where the whole doesn't fit: what stands before the explanation.
  short: short ?? says.split(/[,:]/)[0] ?? says,
});

function acts(keys: KeyMap, { columns, theme }: View): readonly Line[] {
  const find = (act: Act): readonly Entry[] =>
    keys.filter((binding) => binding.act === act).map(entryOf);
  const select = { keys: '1 to 9, arrows', says: 'select a piece', short: 'select a piece' };
  const left = [
    select,
    ...withGloves.flatMap((act) =>
      act === 'earlier' ? together(find(act), find('later')) : act === 'later' ? [] : find(act),
    ),
  ];
  const right = keys
    .filter(({ act }) => !withGloves.includes(act) && !toldElsewhere.includes(act))
    .map(entryOf);
  if (columns < twoColumns)
    return [...left, ...right].map((entry) =>
      drawEntry(entry, keyCells([...left, ...right]), columns, theme.glyphs),
    );
  const half = Math.max(keyCells(left) + 21, Math.floor(columns / 2) - 2);
  return Array.from({ length: Math.max(left.length, right.length) }, (_, row) => [
    ...(left[row] === undefined
      ? lineOf(padEnd('', half))
      : drawEntry(left[row], keyCells(left), half, theme.glyphs)),
    ...(right[row] === undefined
      ? []
      : [
          segment(' '),
          ...drawEntry(right[row], keyCells(right), columns - half - 1, theme.glyphs),
        ]),
  ]);
}

/** Two keys that do the like share a row: 24 of them are few. */
const together = ([a]: readonly Entry[], [b]: readonly Entry[]): readonly Entry[] =>
  a === undefined || b === undefined
    ? [a ?? b].filter((each) => each !== undefined)
    : [
        {
          keys: `${a.keys} or ${b.keys}`,
          says: `${a.short}, ${b.short}`,
          short: `${a.short}, ${b.short}`,
        },
      ];

/** Keys take at most this much, so that what they do stays readable beside many of them. */
const mostKeyCells = 16;

const keyCells = (entries: readonly Entry[]): number =>
  Math.min(mostKeyCells, Math.max(...entries.map(({ keys }) => width(keys)))) + 2;

function drawEntry(
  { keys, says, short }: Entry,
  forKeys: number,
  cells: number,
  glyphs: GlyphSet,
): Line {
  const room = cells - forKeys;
  const told = width(says) <= room ? says : short;
  return [
    segment(fitEnd(keys, forKeys - 2, glyphs) + '  ', 'strong'),
    segment(fitEnd(told, room, glyphs)),
  ];
}

const guards = (keys: KeyMap): readonly string[] => [
  `${keyOf(keys, 'pick up')}, next stamp and done count once a second. A leaning glove counts as none.`,
  'Any key silences a loud ping and selects its piece, and does nothing else.',
];
