import type { Piece } from '../../tracker/bench/index.ts';
import { countsWords, profileWords } from '../../tracker/trade/index.ts';
import { lineOf, segment, spread, type Line } from '../drawing/index.ts';
import { dayWords } from '../format/index.ts';
import { calledPiece } from '../parts/called-piece.ts';
import { heading } from '../parts/heading.ts';
import type { View } from '../screen.ts';
import { areaWords } from './describe-piece.ts';

/** Two rows: which piece it is and what is promised; what else is known of it, or what calls loudly meanwhile. */
export function pieceHead(piece: Piece, view: View): readonly Line[] {
  const { columns, theme } = view;
  const wood = piece.wood === null ? '' : `   ${piece.wood}wood`;
  const left: Line = [
    segment(calledPiece(piece), 'strong'),
    segment(`   ${piece.schedule.name}${wood}`),
  ];
  const promised = piece.promised === null ? [] : lineOf(`promised ${dayWords(piece.promised)}`);
  const [title = [], second = []] = heading(spread(left, promised, columns, theme.glyphs), view);
  const calls = second[0]?.role === 'loud';
  return [title, calls ? second : lineOf(knownOf(piece, view), 'quiet')];
}

/** `0.9 m2   made 1950   stool   parts: case, drawers   hold: hinge plates, ask Thu 26 Nov` */
function knownOf(piece: Piece, { snapshot }: View): string {
  const { areaM2, profile, yearMade, kind, parts, hold } = piece;
  const ask = hold === null || hold.askAgain === null ? '' : `, ask ${dayWords(hold.askAgain)}`;
  return [
    ...(hold === null ? [] : [`hold: ${hold.reason}${ask}`]),
    ...(parts.length === 0 ? [] : [`parts: ${parts.map(({ name }) => name).join(', ')}`]),
    ...(areaM2 === null ? [] : [areaWords(areaM2, snapshot.shop.lengths)]),
    ...(profile === null ? [] : [profileWords(profile)]),
    ...countsWords(piece),
    ...(yearMade === null ? [] : [`made ${yearMade}`]),
    ...(kind === null ? [] : [kind]),
  ].join('   ');
}
