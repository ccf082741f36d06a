import { explainStretch, labelOf, type Standing } from '../../tracker/bench/index.ts';
import { stretchAt, type TimedStretch, type Window } from '../../tracker/windows/index.ts';
import { callWords, whenInWords } from '../../views/format/index.ts';
import { edgeWords } from '../../views/piece/edge-words.ts';
import { heavyCoatWords } from '../../views/piece/heavy-coat.ts';
import type { Look } from '../line/look.ts';

/** Every running window with its stretches, the one in force marked, and the sum by which each begins when it does. */
export function windowLines(standings: readonly Standing[], look: Look): readonly string[] {
  const { now, shop } = look;
  const lines = standings.flatMap((standing) =>
    standing.windows.flatMap((window) => [
      `${calledRow(standing, window)}: ${callWords(window, now, shop)}`,
      ...window.stretches.map((stretch) => stretchLine(stretch, window, look)),
      ...heavyLine(standing, window),
    ]),
  );
  return lines.length === 0 ? ['No window runs.'] : lines;
}

function calledRow(standing: Standing, { rule, subject }: Window): string {
  const { piece } = standing;
  if (piece === null) return labelOf(standing);
  const step = piece.steps.find(({ id }) => id === subject.stepId);
  const part = piece.parts.find(({ id }) => id === subject.partId);
  const section = subject.section === null ? undefined : `section ${subject.section}`;
  return [`${piece.number} ${piece.name}`, part?.name, step?.name, section, rule.id]
    .filter((word) => word !== undefined)
    .join(', ');
}

function heavyLine({ piece }: Standing, window: Window): readonly string[] {
  const words = piece === null ? null : heavyCoatWords(piece, window);
  return words === null ? [] : [`    ${words}`];
}

function stretchLine(stretch: TimedStretch, window: Window, look: Look): string {
  const { bench, now, shop, sense } = look;
  const { meaning, loss, says, begins, ends } = stretch;
  const mark = stretch === stretchAt(window, now) ? '>' : ' ';
  const till = ends === null ? '' : ` to ${whenInWords(ends, now, shop)}`;
  const cost = loss === 'costs nothing' ? '' : `, ${loss}`;
  const then = says === undefined ? '' : `: ${says}`;
  const reason = explainStretch(bench, window, stretch, sense);
  const why = reason === null ? '' : ` (${edgeWords(reason, now, shop)})`;
  return `  ${mark} ${meaning.padEnd(14)} from ${whenInWords(begins, now, shop)}${till}${cost}${then}${why}`;
}
