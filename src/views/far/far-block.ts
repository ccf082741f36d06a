import { minute, second } from '../../tracker/time/index.ts';
import { stateAt, stretchAt } from '../../tracker/windows/index.ts';
import { fitLine, glyphSets, segment, type Line, type Role } from '../drawing/index.ts';
import { wrapWords } from '../drawing/wrap.ts';
import { callWords, clock, timeLeft, whenInWords } from '../format/index.ts';
import { kindWords } from '../format/kind-words.ts';
import { calledPiece } from '../parts/called-piece.ts';
import { callOf } from '../ping-text/window-ping.ts';
import type { View } from '../screen.ts';
import { beside, letters, lettersWidth, small, type Letters } from './letters.ts';
import type { FarCall } from './what-calls.ts';

const margin = 3;
/** Below this one line of words is all that the large letters leave room for. */
const fewRows = 9;

/** The largest form of what calls first for which there is room: number and verb, count-down and clock, sentences. */
export function urgentBlock(call: FarCall, view: View, room: number): readonly Line[] {
  const said = sentences(call, view);
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
  const [said = ''] = sentences(call, view);
  const fits = lettersWidth(rows) + margin <= view.columns && rows.length + 2 <= room;
  return room < 1 ? [] : painted(fits ? rows : [], [said], call, view);
}

/** When nothing is near: what comes next and when, three rows tall, and its sentence. */
export function calmBlock(call: FarCall, view: View, room: number): readonly Line[] {
  const { columns, now, snapshot, theme } = view;
  const { number, verb } = names(call);
  const draw = (text: string): Letters => letters(text, 3, theme.glyphs);
  const when = call.at === null ? '' : whenInWords(call.at, now, snapshot.shop);
  const sentence = calmSentence(call, view);
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

/** `3 Beech stool: try it from 15:10, 41 min` */
function calmSentence(call: FarCall, { columns, now, snapshot }: View): readonly string[] {
  const { shop } = snapshot;
  const left = call.at === null ? '' : timeLeft(call.at, now, shop).replaceAll(' ', unbroken);
  const text = `${nameOf(call)}: ${callWords(call.window, now, shop)}${left === '' ? '' : `, ${left}`}`;
  return wrapWords(text, columns - margin).map((line) => line.replaceAll(unbroken, ' '));
}

/** A figure stays on the line of its unit. */
const unbroken = '\u00a0';

function nameOf({ standing, window }: FarCall): string {
  const { piece, timer } = standing;
  if (piece === null) return timer?.label ?? '';
  const part = piece.parts.find(({ id }) => id === window.subject.partId)?.name;
  return part === undefined ? calledPiece(piece) : `${calledPiece(piece)}, ${part}`;
}

function names({ standing, window }: FarCall): { readonly number: string; readonly verb: string } {
  const { piece, timer } = standing;
  const { call } = kindWords(window);
  const verb = timer === null && window.rule.kind !== 'timer' ? call : 'time is up';
  return { number: piece === null || piece.number === null ? '-' : String(piece.number), verb };
}

/** What is left and until when; of what is lost, since when. */
function countdown(
  { window, at, isLost }: FarCall,
  { now, snapshot }: View,
): { readonly count: string; readonly word: string; readonly by: string } {
  const { shop } = snapshot;
  if (at === null && !isLost) return { count: 'now', word: '', by: '' };
  if (at === null)
    return { count: 'late', word: 'since', by: clock(stretchAt(window, now).begins, shop) };
  const word = stateAt(window, now) === 'before' ? 'at' : 'by';
  return { count: minutesAndSeconds(at - now), word, by: clock(at, shop) };
}

/** `9:05`; rounded up, so that 0:00 comes when it is over. */
function minutesAndSeconds(ms: number): string {
  const seconds = Math.max(0, Math.ceil(ms / second));
  return `${Math.floor((seconds * second) / minute)}:${String(seconds % 60).padStart(2, '0')}`;
}

/** The name with what there is to do, what comes after, the gear, and when it began. */
function sentences(call: FarCall, { columns, now, snapshot }: View): readonly string[] {
  const { window, isLost } = call;
  const { shop } = snapshot;
  const { says, more } = callOf({ window, reason: 'soon' }, now, shop);
  const told = [
    `${nameOf(call)}: ${isLost ? says : callWords(window, now, shop)}`,
    ...more,
    `began ${whenInWords(window.begunAt, now, shop)}`,
  ];
  return wrapWords(told.map(sentence).join(' '), columns - 2 * margin);
}

const sentence = (text: string): string => `${text.charAt(0).toUpperCase()}${text.slice(1)}.`;

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
