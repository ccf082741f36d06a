import { isDone, type Piece, type PlannedStep } from '../../tracker/bench/index.ts';
import { cut, type Line } from '../drawing/index.ts';
import type { View } from '../screen.ts';
import { isToDo } from './marked-step.ts';
import { blockLabelCells, labelled } from './window-block.ts';

/** Everything to be careful about in a step: what its product's label says, and what the step itself does. */
export type Cautions = {
  readonly all: readonly string[];
  /** Those that are said in full: all of them the first time, and the deadly ones always. */
  readonly full: readonly string[];
  /** Those of which one line is enough. */
  readonly brief: readonly string[];
  readonly isDeadly: boolean;
};

export function cautionsOf(piece: Piece, step: PlannedStep): Cautions {
  const product = step.product === undefined ? undefined : piece.products[step.product];
  const ofProduct = product?.cautions ?? [];
  const ofStep = step.cautions.filter((text) => !ofProduct.includes(text));
  const others = piece.steps.filter(({ id }) => id !== step.id && isDone(piece, id, null));
  const usedBefore =
    step.product !== undefined && others.some((each) => each.product === step.product);
  const isDeadly = product?.deadly === true && ofProduct.length > 0;
  const isKnown = !isToDo(piece, step);
  const full = [
    ...(isDeadly || !(usedBefore || isKnown) ? ofProduct : []),
    ...ofStep.filter((text) => !isKnown && !others.some((each) => each.cautions.includes(text))),
  ];
  const all = [...ofProduct, ...ofStep];
  return { all, full, brief: all.filter((text) => !full.includes(text)), isDeadly };
}

/** The lines of the block: the full ones whole, of the rest one line. `allByKey` is where the rest is read. */
export function cautionLines(
  { full, brief }: Cautions,
  view: View,
  allByKey = 'c',
): readonly Line[] {
  const { columns, theme } = view;
  const [first, ...more] = brief;
  const rest = more.length === 0 ? '' : ` (${more.length} more: ${allByKey})`;
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
