import { fitEnd, fitStart, lineOf, type Line } from '../drawing/index.ts';
import { wrapWords } from '../drawing/wrap.ts';
import { fullDay, shopDay } from '../format/index.ts';
import type { ScrolledPage } from '../page.ts';
import { heading } from '../parts/heading.ts';
import { keyHints } from '../parts/key-hints.ts';
import { messageLines } from '../parts/message-lines.ts';
import type { HoursLookedAt } from '../port.ts';
import type { View } from '../screen.ts';
import type { ImportHoursState } from '../screens.ts';
import { counted, importCells, importColumns, toTakeWords } from './import-words.ts';

/** What would be taken, by step class, then every line that is refused with its place and why. */
export function previewPage(
  { text, from }: ImportHoursState,
  looked: HoursLookedAt,
  view: View,
): ScrolledPage {
  const { columns, snapshot } = view;
  const { rows, refused, passedOver } = looked;
  const file = text.trim();
  const words = (told: readonly string[], role: 'text' | 'refusal'): readonly Line[] =>
    told.flatMap((each) => wrapWords(each, columns)).map((line) => lineOf(line, role));
  const title =
    rows.length === 0
      ? `Nothing can be taken from ${file}.`
      : `${file}: ${toTakeWords(rows, snapshot.shop.zone)}`;
  const [first = '', ...more] = wrapWords(title, columns);
  const [top = lineOf(''), loud = lineOf('')] = heading(lineOf(first, 'strong'), view);
  const table = rows.length === 0 ? [] : [importColumns, ...importCells(rows)];
  const already = takenAlready(looked, view);
  return {
    head: [top, ...more.map((line) => lineOf(line, 'strong')), loud],
    body: [
      ...table.map((cells, index) => tableLine(cells, index === 0, columns)),
      ...words(already === null ? [] : [already], 'refusal'),
      ...words(refused, 'refusal'),
      ...words(
        passedOver.length === 0 ? [] : [`Passed over: the columns ${passedOver.join(', ')}.`],
        'text',
      ),
    ],
    foot: [
      ...messageLines(view),
      ...keyHints(
        [
          ...(already === null && rows.length > 0 ? [takeHint(looked)] : []),
          'n: take nothing, another file',
          'up, down',
        ],
        columns,
      ),
    ],
    from,
  };
}

/** `y: take the other 12 lines, 3 are refused` */
const takeHint = ({ rows, refused }: HoursLookedAt): string =>
  refused.length === 0
    ? `y: take ${counted(rows.length, 'line')}`
    : `y: take ${counted(rows.length, 'line')} and leave out what is refused`;

/** That the same hours were taken before, under whatever name; null where they were not. */
export function takenAlready(
  { rows, fingerprint }: HoursLookedAt,
  { snapshot }: Pick<View, 'snapshot'>,
): string | null {
  const before = snapshot.bench.imports?.find((each) => each.fingerprint === fingerprint);
  if (before === undefined || rows.length === 0) return null;
  const day = fullDay(shopDay(before.takenAt, snapshot.shop.zone));
  return `Not taken: these hours are in already, from ${before.file} on ${day}. To take those out: recoat import-hours --take-out NUMBER`;
}

const widths = [24, 6, 5, 10, 10, 11] as const;
/** A narrow terminal leaves the estimate to what it comes to in times. */
const narrowWidths = [15, 0, 4, 10, 0, 11] as const;

function tableLine(cells: readonly string[], isHeader: boolean, columns: number): Line {
  const text = (columns < 80 ? narrowWidths : widths)
    .map((width, index) => {
      const cell = cells[index] ?? '';
      return index === 0 ? fitEnd(cell, width) : width === 0 ? '' : fitStart(cell, width);
    })
    .join('');
  return lineOf(text, isHeader ? 'quiet' : 'text');
}
