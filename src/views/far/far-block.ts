import { fitLine, glyphSets, segment, type Line, type Role } from '../drawing/index.ts';
import { whenInWords } from '../format/index.ts';
import type { View } from '../screen.ts';
import { calmSentence, countdown, names, sentences } from './far-words.ts';
import { beside, letters, lettersWidth, small, type Letters } from './letters.ts';
import type { FarCall } from './what-calls.ts';

const margin = 3;
/** Below this one line of words is all that the large letters leave room for. */
const fewRows = 9;

/** The largest form of what calls first for which there is room: number and verb, count-down and clock, sentences. */
export function urgentBlock(call: FarCall, view: View, room: number): readonly Line[] {
  const said = sentences(call, view, view.columns - 2 * margin);
  const least = Math.min(room < fewRows ? 1 : 2, said.length);
  const large = largeForms(call, view)
    .map((groups) => groups.flatMap((rows, index) => (index === 0 ? rows : ['', ...rows])))
    .find((rows) => rows.length + 1 + least <= room && lettersWidth(rows) + margin <= view.columns);
  const left = large === undefined ? room : room - large.length - 1;
  return painted(large ?? [], firstOf(said, left, view), call, view);
}

/** As many lines as there is room for; a text that goes on is marked so. */
const firstOf = (lines: readonly string[], room: number, { theme }: View): readonly string[] =>
  lines.length <= room
    ? lines
    : lines
        .slice(0, room)
        .map((line, index) => (index === room - 1 ? line + glyphSets[theme.glyphs].cut : line));

/** From the largest down, each as groups of rows. */
function largeForms(call: FarCall, view: View): readonly (readonly Letters[])[] {
  const { theme } = view;
  const draw = (text: string, rows: 3 | 5): Letters => letters(text, rows, theme.glyphs);
  const { number, verb } = names(call);
  const { count, word, by } = countdown(call, view);
  const verbs = (height: 3 | 5, verbHeight: 3 | 5): Letters =>
    beside([draw(number, height), draw(verb, verbHeight)], 4);
  const counts = (height: 3 | 5, byHeight: 3 | 5 | null): Letters =>
    byHeight === null || by === ''
      ? draw(count, height)
      : beside([draw(count, height), small(word), draw(by, byHeight)], 4);
  return [
    [verbs(5, 5), counts(5, 5)],
    [verbs(5, 3), counts(5, 3)],
    [verbs(5, 3), counts(5, null)],
    [verbs(3, 3), counts(5, null)],
    [draw(number, 5), counts(5, null)],
    [verbs(3, 3), counts(3, 3)],
    [verbs(3, 3), counts(3, null)],
    [small(`${number} ${verb}`), counts(5, null)],
    [small(`${number} ${verb}`), counts(3, null)],
  ];
}

/** The second in line, three rows tall where there is room, else told in a sentence alone. */
export function secondBlock(call: FarCall, view: View, room: number): readonly Line[] {
  const { number, verb } = names(call);
  const { count } = countdown(call, view);
  const glyphs = view.theme.glyphs;
  const rows = beside(
    [number, verb, count].map((text) => letters(text, 3, glyphs)),
    4,
  );
  const said = firstOf(sentences(call, view, view.columns - 2 * margin), 1, view);
  const fits = lettersWidth(rows) + margin <= view.columns && rows.length + 2 <= room;
  return room < 1 ? [] : painted(fits ? rows : [], said, call, view);
}

/** When nothing is near: what comes next and when, three rows tall, and its sentence. */
export function calmBlock(call: FarCall, view: View, room: number): readonly Line[] {
  const { columns, now, snapshot, theme } = view;
  const { number, verb } = names(call);
  const draw = (text: string): Letters => letters(text, 3, theme.glyphs);
  const when = call.at === null ? '' : whenInWords(call.at, now, snapshot.shop);
  const sentence = calmSentence(call, view, view.columns - margin);
  const forms: readonly Letters[] = [
    beside([number, verb, when].map(draw), 4),
    [...beside([number, verb].map(draw), 4), '', ...draw(when)],
    [`${number} ${verb}`, '', ...draw(when)],
  ];
  const form = forms.find(
    (rows) => lettersWidth(rows) + margin <= columns && rows.length + 1 + sentence.length <= room,
  );
  const rows = form === undefined ? sentence : [...form, '', ...sentence];
  return rows.slice(0, room).map((row) => indented(row, 'strong'));
}

/** Large letters in the look of what is lost; what calls loudly turns over from edge to edge. */
function painted(
  large: readonly string[],
  said: readonly string[],
  call: FarCall,
  { columns, theme }: View,
): readonly Line[] {
  const role = roleOf(call);
  const gap = large.length > 0 && said.length > 0 ? [''] : [];
  const lines = [
    ...large.map((row) => indented(row, role)),
    ...[...gap, ...said].map((row) => indented(row, call.isLoud ? 'loud' : 'strong')),
  ];
  return call.isLoud ? lines.map((line) => fitLine(line, columns, theme.glyphs, 'loud')) : lines;
}

function roleOf({ loss, isLoud }: FarCall): Role {
  if (isLoud) return 'loud';
  return loss === 'spoils' ? 'spoils' : loss === 'costs work' ? 'work lost' : 'strong';
}

const indented = (row: string, role: Role): Line =>
  row === ''
    ? []
    : [segment(' '.repeat(margin), role === 'loud' ? 'loud' : 'text'), segment(row, role)];
