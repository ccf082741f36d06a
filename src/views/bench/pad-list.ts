import { lineOf, type Line } from '../drawing/index.ts';
import { keyMapWith, keyOf, type Act, type KeyMap } from '../keys/key-map.ts';
import type { Frame, View } from '../screen.ts';
import type { BenchRows } from './bench-rows.ts';
import type { BenchState } from './bench-state.ts';
import { dateLine } from './date-line.ts';

/** The acts behind "more", for a bare numeric pad: two presses, and no letters. */
export const moreActs: readonly Act[] = [
  'open piece',
  'add',
  'odd timer',
  'hold',
  'conditions',
  'minutes',
  'job card',
  'overnight',
  'leave',
];

/** The act of a number on the first page; null where it has none. */
export const listedAct = (keys: KeyMap, number: number): Act | null =>
  keys.find(({ listed }) => listed === number)?.act ?? null;

/** The acts of the first page, in the order of their numbers from 1. */
export const listedActs = (keys: KeyMap): readonly (Act | null)[] =>
  [1, 2, 3, 4, 5, 6, 7, 8].map((number) => listedAct(keys, number));

export function drawList(state: BenchState, rows: BenchRows, view: View): Frame {
  const keys = keyMapWith(view.snapshot.settings.keys);
  const piece = rows.selected?.piece ?? null;
  const says = (act: Act | null): string => keys.find((binding) => binding.act === act)?.says ?? '';
  const acts = state.list === 'first' ? [...listedActs(keys), null, listedAct(keys, 0)] : moreActs;
  const items: readonly Line[] = acts.map((act, index) => {
    const text = state.list === 'first' && index === 8 ? 'more' : says(act);
    return lineOf(`  ${(index + 1) % 10}  ${text}`);
  });
  const back = keyOf(keys, 'list');
  return {
    lines: [
      dateLine(view, rows.all),
      lineOf(''),
      lineOf(piece === null ? 'keys' : `keys, on [${piece.number}] ${piece.name}`, 'strong'),
      lineOf(''),
      ...items,
      lineOf(''),
      lineOf(`0-9: that one   ${back} or Esc: the bench`, 'quiet'),
    ],
  };
}
