import type { JobCard } from '../../tracker/bench/index.ts';
import { clock, shopDay } from '../../views/format/index.ts';
import { aboutPiece, cardEnd } from '../../views/job-card/card-lines.ts';
import { tellRow } from '../../views/job-card/card-words.ts';
import { calledPiece } from '../../views/parts/called-piece.ts';
import { visible } from '../../views/drawing/visible.ts';
import { iso } from '../json/iso.ts';
import type { Look } from '../line/look.ts';
import type { Cell } from './csv-lines.ts';

/** Words of the card whose spaces no line break may part; here no line is broken. */
const plainSpaces = (text: string): string => text.replaceAll('\u00a0', ' ');

/** The job card as a table: when, what kind of row, its name, minutes, what was done or said. */
export const jobCardRows = (card: JobCard, { shop }: Look): readonly (readonly Cell[])[] => [
  ['piece', 'at', 'row', 'name', 'minutes', 'what'],
  ...card.rows.map((row): readonly Cell[] => {
    const { name, what } = tellRow(row, shop);
    const minutes = row.row === 'step' && row.minutes !== null ? Math.round(row.minutes) : null;
    return [
      card.piece.name,
      iso(row.at, shop.zone),
      row.row,
      plainSpaces(name),
      minutes,
      plainSpaces(what),
    ];
  }),
];

/** The job card as Markdown with a table (GitHub Flavored Markdown), for whoever gives it to a customer. */
export function jobCardMarkdown(card: JobCard, { now, shop }: Look): readonly string[] {
  const rows = card.rows.map((row) => {
    const { name, minutes, what } = tellRow(row, shop);
    const when = `${shopDay(row.at, shop.zone)} ${clock(row.at, shop)}`;
    return `| ${[when, name, minutes, what].map(markdown).join(' | ')} |`;
  });
  return [
    `# Job card: ${markdown(calledPiece(card.piece))}`,
    '',
    markdown(aboutPiece(card, shop)),
    '',
    ...(rows.length === 0
      ? ['Nothing was recorded on it yet.']
      : ['| when | step | min | what, and under what conditions |', '| --- | --- | ---: | --- |']),
    ...rows,
    '',
    ...cardEnd(card, now, shop).map(([name, words]) => `- ${name}: ${markdown(words)}`),
  ];
}

/** Text in which nothing is a sign of Markdown: no emphasis, link, picture, HTML or cell. */
const markdown = (text: string): string =>
  visible(plainSpaces(text))
    .replace(/[\\`*_{}[\]<>|#~&!$^=]/g, '\\$&')
    .replace(/:(?=\/\/)|@/g, '\\$&')
    .replace(/\bwww\./gi, (found) => `${found.slice(0, -1)}\\.`)
    .replace(/^(\d+)(?=[.)])/, '$1\\')
    .replace(/^[-+]/, '\\$&');
