import { cautionsOfStep } from '../../tracker/cautions/index.ts';
import type { Piece, PlannedStep } from '../../tracker/bench/index.ts';
import { cut, width, type Line } from '../drawing/index.ts';
import { cautionWords } from '../format/index.ts';
import type { View } from '../screen.ts';
import { blockLabelCells, labelled } from './window-block.ts';

/** Everything to be careful about in a step at this moment, in words. */
export type Cautions = {
  readonly all: readonly string[];
  /** Those that are said in full: all of them the first time, and the deadly ones always. */
  readonly full: readonly string[];
  /** Those of which one line is enough. */
  readonly brief: readonly string[];
  readonly isDeadly: boolean;
};

export function cautionsOf(
  piece: Piece,
  step: PlannedStep,
  { snapshot, now }: Pick<View, 'snapshot' | 'now'>,
): Cautions {
  const { bench, rules, sense, shop } = snapshot;
  const found = cautionsOfStep(piece, step, { bench, rules, now, sense });
  const words = (cautions: typeof found.all): readonly string[] =>
    cautions.map((each) => cautionWords(each, now, shop));
  return {
    all: words(found.all),
    full: words(found.full),
    brief: words(found.brief),
    isDeadly: found.isDeadly,
  };
}

/** The lines of the block: the full ones whole, of the rest one line. `allByKey` is where the rest is read. */
export function cautionLines(
  { full, brief }: Cautions,
  view: View,
  allByKey = 'c',
): readonly Line[] {
  const { columns, theme } = view;
  const [first, ...more] = brief;
  const isCut = first !== undefined && width(first) > columns - blockLabelCells;
  const rest =
    more.length > 0 ? ` (${more.length} more: ${allByKey})` : isCut ? ` (whole: ${allByKey})` : '';
  const room = columns - blockLabelCells - rest.length;
  const told = [
    ...full.flatMap((text) => labelled('caution', text, columns)),
    ...(first === undefined
      ? []
      : labelled('caution', cut(first, room, theme.glyphs) + rest, columns)),
  ];
  // The word stands once, whatever number of sentences there are.
  return told.map((line, index) => {
    const [label, ...words] = line;
    return index === 0 || label === undefined
      ? line
      : [{ ...label, text: ' '.repeat(blockLabelCells) }, ...words];
  });
}
