import type { PlannedStep } from '../../tracker/bench/index.ts';
import { foreseenOn } from '../../tracker/estimate/index.ts';
import { fitEnd, glyphSets, padStart, segment, type Line, type Role } from '../drawing/index.ts';
import { rangeInTable, type ShopClock } from '../format/index.ts';
import type { View } from '../screen.ts';
import { isToDo } from './marked-step.ts';
import { stepWindowWords, type OpenedPiece } from './step-window.ts';

/** Where things stand in a row: mark and number, name, minutes, expected, window (none on a narrow screen). */
export type StepColumns = { readonly name: number; readonly window: number };

const tag = 5;
const minutes = 5;
const expected = 9;

/** `clamps off since Wed 22:28`, `Sat 10:28 pm to Mon 10:28 am`: the longest that a window says of times, never cut. */
const windowCells = { '24': 26, '12': 29 } as const;

export function stepColumns(columns: number, { hours }: Pick<ShopClock, 'hours'>): StepColumns {
  const room = columns - tag - minutes - expected;
  if (columns < 70) return { name: room, window: 0 };
  const window = Math.min(44, Math.max(windowCells[hours], Math.floor(room * 0.42)));
  return { name: room - window - 2, window };
}

export function columnHeads({ name, window }: StepColumns, told: string): Line {
  const heads = [
    fitEnd(told, tag + name),
    padStart('min', minutes),
    padStart('expected', expected),
    ...(window === 0 ? [] : ['  window']),
  ];
  return [segment(heads.join(''), 'quiet')];
}

export type StepRow = {
  readonly opened: OpenedPiece;
  readonly step: PlannedStep;
  readonly marked: boolean;
  readonly columns: StepColumns;
  readonly view: View;
};

export function stepRow({ opened, step, marked, columns, view }: StepRow): Line {
  const { bench, piece, standing, hours } = opened;
  const signs = glyphSets[view.theme.glyphs];
  const isHeld =
    standing.session?.targets.some(
      (target) => target.piece === piece.id && target.step === step.id,
    ) === true;
  const own = hours.steps.find((each) => each.step.id === step.id);
  // Hands-on, as what is expected: setup and cleanup stand beside the sum.
  const spent = own?.minutes ?? 0;
  const { low, high } = own?.expected ?? foreseenOn(bench, step, piece);
  const place = String(piece.steps.indexOf(step) + 1);
  const figures = [
    padStart(minutesTold(step, spent, isToDo(piece, step)), minutes),
    padStart(step.skipped ? '' : rangeInTable(low, high), expected),
  ].join('');
  const role = roleOf(marked, isHeld, isToDo(piece, step));
  const row: Line = [
    segment(`${marked ? '>' : ' '}${isHeld ? signs.inHand : ' '}${padStart(place, 2)} `, role),
    segment(fitEnd(step.name, columns.name, view.theme.glyphs), role),
    segment(figures, role),
  ];
  if (columns.window === 0) return row;
  const words = stepWindowWords(opened, step, view);
  return [...row, segment(`  ${fitEnd(words, columns.window, view.theme.glyphs)}`, role)];
}

/** A step that was done without its minutes being recorded is told apart from one that is still to do. */
function minutesTold({ skipped, leftOut }: PlannedStep, spent: number, isToDo: boolean): string {
  if (skipped) return leftOut === true ? 'out' : 'skip';
  if (spent > 0) return String(Math.round(spent));
  return isToDo ? '-' : 'done';
}

const roleOf = (isMarked: boolean, isHeld: boolean, isToDo: boolean): Role => {
  if (isMarked || isHeld) return 'strong';
  return isToDo ? 'text' : 'quiet';
};
