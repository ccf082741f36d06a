import type { Standing } from '../../tracker/bench/index.ts';
import type { Instant } from '../../tracker/time/index.ts';
import {
  cut,
  fitEnd,
  glyphSets,
  padStart,
  segment,
  spaces,
  timeBar,
  width,
  type Line,
  type Role,
} from '../drawing/index.ts';
import type { View } from '../screen.ts';
import { tagCells, type BenchLayout } from './layout.ts';
import type { RowWords } from './row-words.ts';

export type RowInput = {
  readonly standing: Standing;
  readonly words: RowWords;
  readonly selected: boolean;
  readonly layout: BenchLayout;
  readonly farEnd: Instant;
  readonly view: View;
};

/** The first line of a row, or on a narrow screen its two: name and bar, words below. */
export function drawRow(input: RowInput): readonly Line[] {
  const { words, layout, view } = input;
  const { glyphs } = view.theme;
  // A selected number of two digits fills its tag.
  const isTagFull = input.selected && width(numberOf(input.standing)) > 1;
  const gap = isTagFull ? ' ' : '';
  const shown = fitEnd(words.name, layout.name - 1 - gap.length, glyphs);
  const name = segment(`${gap}${shown} `, nameRole(input));
  const clock = padStart(words.clock, layout.clock);
  const left = padStart(words.left, 6);
  if (layout.shape === 'narrow') {
    const told = [
      spaces(tagCells),
      fitEnd(words.words, layout.state, glyphs),
      ' ',
      clock,
      ' ',
      left,
    ].join('');
    return [[...tag(input), name, ...bar(input)], [segment(told, words.role)]];
  }
  const told = [fitEnd(words.words, layout.state, glyphs), ' ', clock, ' ', left, ' '].join('');
  return [[...tag(input), name, segment(told, words.role), ...bar(input)]];
}

/** The line under a row. A long step's name gives up its last letters, what is told of it none. */
export function drawSecond({ words, view }: RowInput): Line {
  const { first, about, told } = words.then;
  const { glyphs } = view.theme;
  const room = view.columns - tagCells;
  const left = Math.max(Math.min(width(about), shortestName), room - width(first + told));
  return [
    segment(
      spaces(tagCells) + fitEnd(first + cut(about, left, glyphs) + told, room, glyphs),
      'quiet',
    ),
  ];
}

/** What of a name is kept whatever else there is to tell. */
const shortestName = 12;

/** Marker and number. A row that has just changed its place has its number underlined, or `^` before it where nothing is drawn but text. */
function tag({ standing, selected, view }: RowInput): Line {
  const signs = glyphSets[view.theme.glyphs];
  const hasMoved = view.moved?.has(standing.key) === true;
  const isPlain = view.theme.colour === 'none' || view.theme.colour === 'bare';
  const marker = standing.session === null ? ' ' : signs.inHand;
  const number = numberOf(standing);
  const role = selected || standing.session !== null ? 'strong' : 'text';
  const before = selected ? '[' : hasMoved && isPlain ? '^' : ' ';
  const after = fitEnd(selected ? ']' : ' ', tagCells - 2 - width(number));
  if (!hasMoved || isPlain) return [segment(marker + before + number + after, role)];
  return [segment(marker + before, role), segment(number, 'moved'), segment(after, role)];
}

const numberOf = ({ piece }: Standing): string =>
  piece === null ? '-' : String(piece.number ?? '');

const nameRole = ({ standing, selected }: RowInput): Role =>
  selected || standing.session !== null ? 'strong' : 'text';

function bar({ standing, layout, farEnd, view }: RowInput): Line {
  const { window } = standing;
  return timeBar({
    now: view.now,
    stretches: window?.stretches ?? [],
    closed: window === null,
    width: layout.bar,
    farEnd,
    glyphs: view.theme.glyphs,
    uncertain: window?.assumed ?? false,
  });
}
