import { cut, lineOf, segment, width, type Line } from '../drawing/index.ts';
import { wrapWhole } from '../drawing/wrap.ts';
import { keyMapWith, keyOf } from '../keys/key-map.ts';
import type { View } from '../screen.ts';
import type { BenchState } from './bench-state.ts';

/** What was noticed since the last key, in at most two rows above the others; what has no room there, with the key to it. */
export function noticeLines({ noticesSeen }: BenchState, view: View): readonly Line[] {
  const { columns, snapshot, theme } = view;
  const notice = snapshot.notices[noticesSeen];
  if (notice === undefined) return [];
  const told = wrapWhole(notice, columns);
  const [first = '', second = ''] = told;
  if (told.length <= 2) return told.map((line) => lineOf(line, 'strong'));
  const rest = `  ${keyOf(keyMapWith(snapshot.settings.keys), 'pings')}: all of it`;
  // What follows makes it too long whatever its own length, so that the mark of a cut always stands.
  const begun = cut(`${second} ${told[2]}`, columns - width(rest), theme.glyphs);
  return [lineOf(first, 'strong'), [segment(begun, 'strong'), segment(rest)]];
}
