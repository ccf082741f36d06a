import {
  moistureFindings,
  type JobCard,
  type JobCardRow,
  type Piece,
} from '../../tracker/bench/index.ts';
import type { Instant } from '../../tracker/time/index.ts';
import { countsWords, profileWords } from '../../tracker/trade/index.ts';
import { fitEnd, fitStart, lineOf, padEnd, segment, spaces, type Line } from '../drawing/index.ts';
import { wrapKept } from '../drawing/wrap.ts';
import {
  clock,
  clockCells,
  dayWords,
  matchWords,
  minutesSpent,
  moistureWords,
  shopDay,
  whenInWords,
} from '../format/index.ts';
import { calledPiece } from '../parts/called-piece.ts';
import type { Shop } from '../port.ts';
import { tellRow } from './card-words.ts';

/** Below this the words stand under the step's name. */
const twoColumns = 70;
const minutesCells = 5;

/** A job card from top to bottom, in lines of at most so many cells; the screen and the plain text are both made from it. */
export function cardLines(
  card: JobCard,
  now: Instant,
  shop: Shop,
  columns: number,
): readonly Line[] {
  const { piece } = card;
  return [
    ...wrapKept(`Job card: ${calledPiece(piece)}`, columns).map((text) => lineOf(text, 'strong')),
    ...wrapped(aboutPiece(card, shop), columns),
    lineOf(''),
    ...rowLines(card.rows, shop, columns),
    ...(card.rows.length === 0 ? [lineOf('Nothing was recorded on it yet.')] : []),
    lineOf(''),
    ...trailing(card, now, shop, columns),
  ];
}

const wrapped = (text: string, columns: number): readonly Line[] =>
  wrapKept(text, columns).map((line) => lineOf(line));

const squareFeet = 10.7639;

/** What is known of the piece itself, in one sentence. */
export function aboutPiece({ piece }: JobCard, { zone, lengths }: Shop): string {
  const { kind, wood, areaM2, profile, yearMade, addedAt, promised, leftAt, place, schedule } =
    piece;
  const size =
    areaM2 === null
      ? null
      : lengths === 'mm'
        ? `about ${areaM2.toFixed(1)} m2`
        : `about ${Math.round(areaM2 * squareFeet)} sq ft`;
  const told = [
    kind,
    wood === null ? null : `${wood}wood`,
    size,
    profile === null ? null : profileWords(profile),
    ...countsWords(piece),
    yearMade === null ? null : `made about ${yearMade}`,
  ].filter((each) => each !== null);
  const days = [
    `in ${dayWords(shopDay(addedAt, zone))}`,
    promised === null ? null : `promised ${dayWords(promised)}`,
    leftAt === null
      ? null
      : `${place === 'removed' ? 'removed' : 'left'} ${dayWords(shopDay(leftAt, zone))}`,
  ].filter((each) => each !== null);
  return [told.join(', '), days.join(', '), schedule.name].filter((each) => each !== '').join('; ');
}

/** Rows by month, each month under its own heading. */
function rowLines(rows: readonly JobCardRow[], shop: Shop, columns: number): readonly Line[] {
  const lines: Line[] = [];
  let month = '';
  for (const row of rows) {
    const on = shopDay(row.at, shop.zone);
    if (!on.startsWith(month) || month === '') {
      month = on.slice(0, 7);
      lines.push(headerLine(month, lines.length === 0, shop, columns));
    }
    const stamp = `${on.slice(8)} ${clock(row.at, shop)}`;
    lines.push(...oneRow(row, stamp, shop, columns));
  }
  return lines;
}

const stampCells = (shop: Shop): number => 3 + clockCells(shop) + 1;
const nameCells = (columns: number): number => (columns < 100 ? 22 : 30);

function headerLine(month: string, isFirst: boolean, shop: Shop, columns: number): Line {
  const left = padEnd(month, stampCells(shop));
  if (columns < twoColumns) return lineOf(month, 'quiet');
  const titles = `${fitEnd('step', nameCells(columns))}${fitStart('min', minutesCells)}  what, and under what conditions`;
  return lineOf(isFirst ? left + titles : month, 'quiet');
}

function oneRow(row: JobCardRow, stamp: string, shop: Shop, columns: number): readonly Line[] {
  const { name, minutes, what } = tellRow(row, shop);
  const before = stampCells(shop);
  const isWork = row.row === 'step';
  if (columns < twoColumns) {
    const room = columns - before - minutesCells;
    const names = wrapKept(name, room);
    return [
      ...names.map((text, index): Line => [
        segment(padEnd(index === 0 ? stamp : '', before), 'quiet'),
        segment(fitEnd(text, room), isWork ? 'strong' : 'text'),
        segment(index === 0 ? fitStart(minutes, minutesCells) : ''),
      ]),
      ...(what === '' ? [] : wrapKept(what, columns - before)).map((text) =>
        lineOf(spaces(before) + text),
      ),
    ];
  }
  const room = nameCells(columns);
  const names = wrapKept(name, room - 1);
  const texts = what === '' ? [] : wrapKept(what, columns - before - room - minutesCells - 2);
  return Array.from({ length: Math.max(names.length, texts.length) }, (_, index): Line => [
    segment(padEnd(index === 0 ? stamp : '', before), 'quiet'),
    segment(fitEnd(names[index] ?? '', room), isWork ? 'strong' : 'text'),
    segment(fitStart(index === 0 ? minutes : '', minutesCells)),
    segment(texts[index] === undefined ? '' : `  ${texts[index]}`),
  ]);
}

function trailing(card: JobCard, now: Instant, shop: Shop, columns: number): readonly Line[] {
  const label = 9;
  return cardEnd(card, now, shop).flatMap(([name, words]) =>
    wrapKept(words, columns - label).map((text, index): Line => [
      segment(padEnd(index === 0 ? name : '', label), 'quiet'),
      segment(text),
    ]),
  );
}

/** What is still to come, and what it took: words under their names. */
export function cardEnd(
  { toDo, curing, matches, minutes, sessions, piece }: JobCard,
  now: Instant,
  shop: Shop,
): readonly (readonly [name: string, words: string])[] {
  const when = (at: Instant): string => whenInWords(at, now, shop);
  const toDoWords = toDo.map(({ name, notBefore }) =>
    notBefore === null ? name : `${name} (from ${when(notBefore)})`,
  );
  const count = `${Math.round(minutes)} in ${sessions} ${sessions === 1 ? 'session' : 'sessions'}`;
  const hours = minutes < 100 ? '' : `, ${minutesSpent(minutes * 60_000)}`;
  return [
    ...(piece.hold === null ? [] : [['hold', piece.hold.reason] as const]),
    ['to do', toDoWords.length === 0 ? 'nothing' : toDoWords.join(', ')],
    ...(curing.length === 0
      ? []
      : [
          [
            'curing',
            curing.map(({ milestone, at }) => `${milestone} from ${when(at)}`).join(', '),
          ] as const,
        ]),
    ...matches.map((finding) => ['matches', matchWords(finding)] as const),
    ...moistureFindings(piece, null).map(
      (finding) =>
        [
          'moisture',
          moistureWords(finding, partCalled(piece, finding.part), now, shop).join('; '),
        ] as const,
    ),
    // The rows' minutes too: the card is the record, the hours tell hands-on time.
    ['minutes', count + hours + (sessions === 0 ? '' : ', with setup and cleanup')],
  ];
}

const partCalled = (piece: Piece, part: string | null): string | null =>
  piece.parts.find(({ id }) => id === part)?.name ?? null;
