import { lineOf, type Line } from '../drawing/index.ts';

/** What stands around the list of steps, and what each part of it is worth where rows lack. */
export type Around = {
  readonly title: Line;
  readonly known: Line;
  readonly heads: (told: string) => Line;
  readonly total: Line;
  readonly window: readonly Line[];
  /** What a meter says of the wood, and in what it differs from a piece that it should match. */
  readonly beside: readonly Line[];
  readonly caution: readonly Line[];
  /** A deadly caution gives way to nothing but the marked step and the keys. */
  readonly isDeadly: boolean;
  readonly note: readonly Line[];
  readonly foot: readonly Line[];
};

/** Fewer steps than this say little. */
const fewestSteps = 3;

/**
 * The screen of an opened piece in exactly so many rows. Where they lack, blank rows go first, then the note, what is
 * known, the total, the window's block, what stands beside it and the caution, from their ends; the list scrolls so that the marked step shows.
 */
export function fitBlocks(
  steps: readonly Line[],
  marked: number,
  around: Around,
  rows: number,
): readonly Line[] {
  const foot = around.foot.slice(0, Math.max(1, rows - 2));
  const fewest = Math.min(steps.length, around.isDeadly ? 1 : fewestSteps);
  let left = rows - foot.length - 1 - fewest;
  const take = (lines: readonly Line[]): readonly Line[] => {
    if (lines.length > left) return [];
    left -= lines.length;
    return lines;
  };
  const takeSome = (lines: readonly Line[]): readonly Line[] =>
    take(lines.length <= left ? lines : cutOff(lines, left));
  const deadly = around.isDeadly ? takeSome(around.caution) : [];
  const window = take(around.window);
  const caution = around.isDeadly ? deadly : takeSome(around.caution);
  const beside = take(around.beside.slice(0, Math.max(0, left)));
  const heads = take([around.heads('')]);
  const total = take([around.total]);
  const known = isEmpty(around.known) ? [] : take([around.known]);
  const note = take(around.note);
  const shown = Math.min(steps.length, fewest + Math.max(0, left));
  left -= shown - fewest;
  const from = Math.max(0, Math.min(marked - Math.floor(shown / 2), steps.length - shown));
  const told = shown < steps.length ? `${from + 1} to ${from + shown} of ${steps.length}` : '';
  const block = [...window, ...beside, ...caution, ...note];
  const above = known.length > 0 ? [] : take([lineOf('')]);
  const gap = block.length > 0 ? take([lineOf('')]) : [];
  const rest = Array.from({ length: Math.max(0, left) }, () => lineOf(''));
  return [
    around.title,
    ...known,
    ...above,
    ...(heads.length > 0 ? [around.heads(told)] : []),
    ...steps.slice(from, from + shown),
    ...total,
    ...gap,
    ...block,
    ...rest,
    ...foot,
  ];
}

const isEmpty = (line: Line): boolean => line.every(({ text }) => text.trim() === '');

/** As many lines of a caution as there is room for; the last one says where the rest is. */
function cutOff(lines: readonly Line[], room: number): readonly Line[] {
  if (room < 1) return [];
  return [...lines.slice(0, room - 1), lineOf('         c: cautions in full', 'strong')];
}
