import {
  firstSteps,
  judgedRow,
  type BackTest,
  type BackTestRow,
} from '../../tracker/learning/index.ts';
import {
  fitEnd,
  fitStart,
  segment,
  type GlyphSet,
  type Line,
  type Role,
} from '../drawing/index.ts';
import type { FinishedTable, TableSpace } from './finished-tables.ts';
import { markCells } from './hours-layout.ts';

const stepsCells = 7;
const heldCells = 11;
const judgedCells = 12;
const missedCells = 12;

type Cells = { readonly name: number; readonly isNarrow: boolean };

/** A narrow terminal leaves by how much was missed to the sentences. */
function cellsOf(columns: number): Cells {
  const isNarrow = columns < 80;
  const figures = stepsCells + (isNarrow ? heldCells : heldCells + judgedCells + 2 * missedCells);
  return { name: Math.max(8, Math.min(34, columns - markCells - figures)), isNarrow };
}

/** Whether ranges would have held, had everything always been foretold as it is today. */
export function backTestTable(
  result: BackTest | null,
  { columns, glyphs }: TableSpace,
): FinishedTable {
  const cells = cellsOf(columns);
  return {
    title: cells.isNarrow ? 'class' : 'step class',
    header: (title) => headerLine(title, cells),
    rows: rowsOf(result).map(
      ({ name, row }) =>
        (isMarked) =>
          rowLine(name, row, isMarked, cells, glyphs),
    ),
    sentences: backTestWords(result),
  };
}

function rowsOf(
  result: BackTest | null,
): readonly { readonly name: string; readonly row: BackTestRow }[] {
  if (result === null || result.whole === null) return [];
  const { whole, first, classes } = result;
  return [
    { name: 'all steps', row: whole },
    ...(first === null ? [] : [{ name: `your first ${firstSteps}`, row: first }]),
    ...classes.map((row) => ({ name: row.stepClass, row })),
  ];
}

function headerLine(title: string, { name, isNarrow }: Cells): Line {
  const figures = fitStart('steps', stepsCells) + fitStart('range held', heldCells);
  const more =
    fitEnd('', 2) +
    fitEnd('', judgedCells - 2) +
    fitStart('missed by', missedCells) +
    fitStart('schedule', missedCells);
  return [segment(fitEnd(title, markCells + name) + figures + (isNarrow ? '' : more), 'quiet')];
}

function rowLine(
  name: string,
  row: BackTestRow,
  isMarked: boolean,
  { name: nameCells, isNarrow }: Cells,
  glyphs: GlyphSet,
): Line {
  const role: Role = isMarked ? 'strong' : 'text';
  const judged = judgedRow(row);
  const figures = fitStart(String(row.steps), stepsCells) + fitStart(inHundred(row), heldCells);
  const head = segment((isMarked ? '> ' : '  ') + fitEnd(name, nameCells, glyphs) + figures, role);
  if (isNarrow) return [head];
  return [
    head,
    segment(
      `  ${fitEnd(judged ?? 'few yet', judgedCells - 2)}`,
      judged === 'too narrow' ? 'work lost' : 'quiet',
    ),
    segment(
      fitStart(byTimes(row.missed), missedCells) +
        fitStart(byTimes(row.scheduleMissed), missedCells),
      role,
    ),
  ];
}

const byTimes = (ratio: number): string => `${ratio.toFixed(2)} times`;

const inHundred = ({ held, steps }: BackTestRow): string =>
  `${Math.round((100 * held) / steps)} in 100`;

/** What was tried, whether it held, and by how much it missed. */
function backTestWords(result: BackTest | null): readonly string[] {
  const what =
    'Every step foretold anew, as it is done today, from what was finished before it and nothing later.';
  if (result === null || result.whole === null) {
    const isDone = result !== null && result.done === result.of;
    return [
      what,
      ...(isDone ? ['No step to try yet: it takes two that were done and timed.'] : []),
    ];
  }
  const { whole } = result;
  const claim = `${Math.round(whole.claimed * 100)} in 100 was claimed, ${inHundred(whole)} held`;
  const judged = judgedRow(whole);
  const learned = `half of the steps missed by less than ${byTimes(whole.missed)}, by the finishing schedule alone ${byTimes(whole.scheduleMissed)}.`;
  return [what, `${claim}${judged === null ? '; few steps yet' : `: ${judged}`}; ${learned}`];
}
