import type { Standing } from '../../tracker/bench/index.ts';
import type { Instant } from '../../tracker/time/index.ts';
import { stretchAt, type TimedStretch, type Window } from '../../tracker/windows/index.ts';
import { callWords, whenInWords } from '../../views/format/index.ts';
import type { Shop } from '../../views/port.ts';

/** Every running window with its stretches, the one in force marked. */
export function windowLines(
  standings: readonly Standing[],
  now: Instant,
  shop: Shop,
): readonly string[] {
  const lines = standings.flatMap((standing) =>
    standing.windows.flatMap((window) => [
      `${calledRow(standing, window)}: ${callWords(window, now, shop)}`,
      ...window.stretches.map((stretch) => stretchLine(stretch, window, now, shop)),
    ]),
  );
  return lines.length === 0 ? ['No window runs.'] : lines;
}

function calledRow({ piece, timer }: Standing, { rule, subject }: Window): string {
  if (piece === null) return timer?.label ?? rule.verb;
  const step = piece.steps.find(({ id }) => id === subject.stepId);
  const part = piece.parts.find(({ id }) => id === subject.partId);
  return [`${piece.number} ${piece.name}`, part?.name, step?.name, rule.id]
    .filter((word) => word !== undefined)
    .join(', ');
}

function stretchLine(stretch: TimedStretch, window: Window, now: Instant, shop: Shop): string {
  const { meaning, loss, says, begins, ends } = stretch;
  const mark = stretch === stretchAt(window, now) ? '>' : ' ';
  const till = ends === null ? '' : ` to ${whenInWords(ends, now, shop)}`;
  const cost = loss === 'costs nothing' ? '' : `, ${loss}`;
  return `  ${mark} ${meaning.padEnd(14)} from ${whenInWords(begins, now, shop)}${till}${cost}${says === undefined ? '' : `: ${says}`}`;
}
