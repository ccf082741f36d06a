import { fitEnd, lineOf, segment, type Line } from '../drawing/index.ts';
import { wrapWords } from '../drawing/wrap.ts';
import { scrolledPage } from '../page.ts';
import { drawField } from '../parts/draw-field.ts';
import { heading } from '../parts/heading.ts';
import { keyHints } from '../parts/key-hints.ts';
import { messageLines } from '../parts/message-lines.ts';
import { fieldIn } from '../parts/writing.ts';
import type { Frame, View } from '../screen.ts';
import type { SettingsState } from '../screens.ts';
import { settingRows, type SettingRow } from './setting-rows.ts';

const labelCells = 16;
/** Rows kept in sight above the marked one. */
const above = 2;
/** Rows that the list keeps where there are few: with these the marked one is in sight. */
const leastOfList = above + 2;

/** The list of settings, and under it what the marked one does. */
export function drawSettings(state: SettingsState, view: View): Frame {
  const rows = settingRows(view);
  const marked = rows[state.at];
  const body = rows.map((row, index) => drawRow(row, index === state.at, state, view));
  const head = heading(lineOf('settings', 'strong'), view);
  const said = [...messageLines(view), ...keyHints(hintsFor(state, marked), view.columns, 3)];
  const room = view.rows - head.length - said.length - leastOfList;
  const help = [lineOf(''), ...(marked === undefined ? [] : helpOf(marked, view))];
  const foot = [...help.slice(0, Math.max(0, room)), ...said];
  return { lines: scrolledPage({ head, body, foot, from: state.at - above }, view) };
}

function drawRow(row: SettingRow, isMarked: boolean, state: SettingsState, view: View): Line {
  const mark = segment(isMarked ? '> ' : '  ', 'strong');
  const label = segment(fitEnd(row.label, labelCells), isMarked ? 'strong' : 'text');
  if (isMarked && state.text !== undefined) {
    const field = drawField(
      '',
      fieldIn(state.text, state),
      view.columns - labelCells - 2,
      view.theme,
    );
    return [mark, label, ...field.line];
  }
  return [mark, label, segment(row.value, isMarked ? 'strong' : 'text')];
}

function helpOf({ help, choices }: SettingRow, { columns }: View): readonly Line[] {
  const lines = wrapWords(help, columns).map((line) => lineOf(line, 'quiet'));
  if (choices === null) return lines;
  const words = choices.words.flatMap((word, index) => [
    segment(index === 0 ? '' : '  ', 'quiet'),
    segment(index === choices.at ? `[${word}]` : word, index === choices.at ? 'strong' : 'quiet'),
  ]);
  return [...lines, words];
}

function hintsFor({ text }: SettingsState, marked: SettingRow | undefined): readonly string[] {
  if (text !== undefined) return ['Enter: set it', 'Esc: leave it as it was'];
  const changes = marked?.choices === null ? 'Enter: write it' : 'left, right: change it';
  return ['up, down: another', changes, 'Esc: back'];
}
