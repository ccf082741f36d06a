import { matchFindings, type Piece } from '../../tracker/bench/index.ts';
import { differenceWords, matchName } from '../../views/format/match-words.ts';
import type { MatchJson } from '../json-shapes/index.ts';
import type { Look } from '../line/look.ts';
import { pieceName } from './names.ts';

export const matchesJson = (piece: Piece, { bench, sense }: Look): readonly MatchJson[] =>
  matchFindings(bench, piece, sense).map((finding) => ({
    name: finding.name,
    piece: finding.partner === null ? null : pieceName(finding.partner),
    differences: finding.differences.map((difference) => ({
      what: difference.what,
      says: differenceWords(difference, matchName(finding)),
    })),
  }));
