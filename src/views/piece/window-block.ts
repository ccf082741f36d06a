import { explainStretch, waitsFor, type PlannedStep } from '../../tracker/bench/index.ts';
import type { Meaning, TimedStretch, Window } from '../../tracker/windows/index.ts';
import { barWidth, fitEnd, segment, spaces, timeBar, type Line } from '../drawing/index.ts';
import { wrapWords } from '../drawing/wrap.ts';
import { noonAfterNight, whenInWords, windowWords } from '../format/index.ts';
import type { Instant } from '../../tracker/time/index.ts';
import type { View } from '../screen.ts';
import { isToDo } from './marked-step.ts';
import { edgeWords } from './edge-words.ts';
import { heavyCoatWords } from './heavy-coat.ts';
import { tellingWindow, windowsAwaited, type OpenedPiece } from './step-window.ts';

/** Cells before what a line of the block says. */
export const blockLabelCells = 9;
const widestBar = barWidth(120);

/** The window that a marked step has running, or waits for; else the one that the piece's row shows. */
export function blockWindow(opened: OpenedPiece, step: PlannedStep, view: View): Window | null {
  const { piece, windows, standing } = opened;
  const own = tellingWindow(opened, step);
  if (own !== null && (own.closedAt === null || own.closedAt > view.now)) return own;
  const [awaited] = isToDo(piece, step) ? windowsAwaited(piece, windows, step, view.now) : [];
  return awaited ?? standing.window;
}

/** The window's bar, and a line for each of its edges: when, the label's figure, and what it counts from. */
export function windowBlock(opened: OpenedPiece, window: Window, view: View): readonly Line[] {
  const { now, columns, snapshot, theme } = view;
  const { words, role } = windowWords(window, now, snapshot.shop);
  const state = words.replace(/(,.*| till| since)$/, '');
  const bar = timeBar({
    now,
    stretches: window.stretches,
    closed: false,
    width: Math.min(widestBar, columns - blockLabelCells),
    farEnd: noonAfterNight(now, snapshot.shop.zone),
    glyphs: theme.glyphs,
    uncertain: window.assumed,
  });
  const heavy = heavyCoatWords(opened.piece, window);
  return [
    [segment(fitEnd(state, blockLabelCells - 1, theme.glyphs) + ' ', role), ...bar],
    ...window.stretches.flatMap((stretch, index) => {
      const before = window.stretches[index - 1];
      return before === undefined
        ? []
        : labelled(
            edgeLabel(stretch.meaning, before),
            edgeTold(opened, window, stretch, view),
            columns,
          );
    }),
    ...closingBeside(opened, window, view),
    ...(heavy === null ? [] : labelled('but', heavy, columns)),
  ];
}

/** Where the window itself costs nothing: what is lost meanwhile by another one of the same step, and when. */
function closingBeside(opened: OpenedPiece, shown: Window, view: View): readonly Line[] {
  if (losses(shown, view.now).length > 0) return [];
  const { piece, windows } = opened;
  const toDo = piece.steps.filter((step) => isToDo(piece, step));
  const others = windows.filter(
    (window) =>
      window.subject.stepId === shown.subject.stepId &&
      window.subject.partId === shown.subject.partId &&
      (window.closedAt === null || window.closedAt > view.now) &&
      toDo.some((step) => waitsFor(piece, step, window, window.subject.partId)),
  );
  const [next] = others
    .flatMap((window) => losses(window, view.now).map((stretch) => ({ window, stretch })))
    .toSorted((a, b) => a.stretch.begins - b.stretch.begins);
  if (next === undefined) return [];
  return labelled('closes', edgeTold(opened, next.window, next.stretch, view), view.columns);
}

/** Stretches to come in which something is lost. */
const losses = ({ stretches }: Window, now: Instant): readonly TimedStretch[] =>
  stretches.filter(
    ({ begins, meaning, loss }, index) =>
      index > 0 && begins > now && (loss !== 'costs nothing' || meaning === 'keep off'),
  );

function edgeLabel(meaning: Meaning, before: TimedStretch): string {
  if (meaning === 'go') return before.meaning === 'keep off' ? 'again' : 'opens';
  if (meaning === 'go after work' && before.meaning === 'wait') return 'opens';
  return meaning === 'late' && before.meaning !== 'go' ? 'late' : 'closes';
}

/** `23:00  label 12 h, from first stroke 11:00; then scuff 320 first` */
function edgeTold(
  { bench }: OpenedPiece,
  window: Window,
  stretch: TimedStretch,
  view: View,
): string {
  const { shop, sense } = view.snapshot;
  const when = whenInWords(stretch.begins, view.now, shop);
  const reason = explainStretch(bench, window, stretch, sense);
  return [
    reason === null ? when : `${when}  ${edgeWords(reason, view.now, shop)}`,
    ...(stretch.says === undefined ? [] : [`then ${stretch.says}`]),
  ].join('; ');
}

/** A label and a sentence beside it, broken into as many lines as it takes. */
export function labelled(
  label: string,
  text: string,
  columns: number,
  role: 'text' | 'strong' = 'text',
): readonly Line[] {
  return wrapWords(text, columns - blockLabelCells).map((line, index) => [
    segment(index === 0 ? fitEnd(label, blockLabelCells) : spaces(blockLabelCells), 'quiet'),
    segment(line, role),
  ]);
}
