import fc from 'fast-check';
import { expect, test } from 'vitest';
import { lineWidth, plain } from '../../../src/views/drawing/index.ts';
import { readPresses, type KeyFlags, type Press } from '../../../src/views/keys/press.ts';
import { drawField } from '../../../src/views/parts/draw-field.ts';
import {
  cursorOf,
  editField,
  fieldOf,
  type TextField,
} from '../../../src/views/parts/text-field.ts';
import { key } from '../support/bench-of.ts';

const theme = { colour: 'none', glyphs: 'blocks' } as const;

const typed = (text: string): readonly Press[] => readPresses(text, {});
const after = (start: TextField, presses: readonly Press[]): TextField =>
  presses.reduce((field, press) => editField(field, press) ?? field, start);
const keys = (...names: readonly string[]): readonly Press[] => names.map((name) => key(name));
/** The text with `|` where the cursor stands. */
const shown = (field: TextField): string =>
  `${field.text.slice(0, cursorOf(field))}|${field.text.slice(cursorOf(field))}`;

test('letters go in at the cursor, as they were typed', () => {
  const field = after(fieldOf(''), typed('Cane Rocker'));
  expect(shown(field)).toBe('Cane Rocker|');
  expect(shown(after(field, [...keys('home'), ...typed('Old ')]))).toBe('Old |Cane Rocker');
  expect(shown(after(field, [...keys('left', 'left'), ...typed('!')]))).toBe('Cane Rock!|er');
});

test.each([
  [['backspace'], 'Oak settl|'],
  [['home', 'backspace'], '|Oak settle'],
  [['home', 'delete'], '|ak settle'],
  [['delete'], 'Oak settle|'],
  [['left', 'left', 'backspace'], 'Oak set|le'],
  [['left', 'delete'], 'Oak settl|'],
  [['home', 'left'], '|Oak settle'],
  [['home', 'right', 'right'], 'Oa|k settle'],
  [['right'], 'Oak settle|'],
  [['home', 'end'], 'Oak settle|'],
])('%j', (names, wanted) => {
  expect(shown(after(fieldOf('Oak settle'), keys(...names)))).toBe(wanted);
});

test.each([
  ['an accent of its own', 'Bürste'.normalize('NFD')],
  ['a family of four', '👨‍👩‍👧‍👦!'],
  ['a flag', '🇨🇭x'],
  ['wide characters', '漆塗り'],
  ['a letter beyond sixteen bits', '𝒜b'],
])('%s is one character to every key', (_, text) => {
  const whole = [...new Intl.Segmenter().segment(text)].map(({ segment }) => segment);
  const field = after(fieldOf(''), typed(text));
  expect(field.text).toBe(text);
  const back = after(field, keys('backspace'));
  expect(back.text).toBe(whole.slice(0, -1).join(''));
  const first = after(field, keys('home', 'delete'));
  expect(first.text).toBe(whole.slice(1).join(''));
  const moved = after(field, keys('home', 'right'));
  expect(cursorOf(moved)).toBe(whole[0]?.length);
});

test('keys that write nothing are left to the screen', () => {
  for (const name of ['enter', 'escape', 'up', 'down', 'tab', 'page up', 'page down'])
    expect(editField(fieldOf('text'), { name, text: '' })).toBeNull();
});

test('a tab from a paste becomes a space', () => {
  expect(editField(fieldOf('a'), { name: '\t', text: '\t' })?.text).toBe('a ');
});

const flags: readonly KeyFlags[] = [
  { backspace: true },
  { delete: true },
  { leftArrow: true },
  { rightArrow: true },
  { home: true },
  { end: true },
];
const anyPresses = fc.array(
  fc.oneof(
    fc.string({ unit: 'grapheme', maxLength: 3 }).map((text) => readPresses(text, {})),
    fc.constantFrom(...flags).map((flag) => readPresses('', flag)),
  ),
  { maxLength: 30 },
);

test('the cursor is always between two characters, and the drawing always as wide as asked for', () => {
  fc.assert(
    fc.property(anyPresses, fc.integer({ min: 12, max: 80 }), (presses, cells) => {
      const field = after(fieldOf(''), presses.flat());
      const cursor = cursorOf(field);
      const starts = [...new Intl.Segmenter().segment(field.text)].map(({ index }) => index);
      expect([...starts, field.text.length]).toContain(cursor);
      for (const colour of ['none', 'bare'] as const) {
        const { line, x } = drawField('name', field, cells, { colour, glyphs: 'blocks' });
        expect(lineWidth(line)).toBe(cells);
        expect(x).toBeGreaterThanOrEqual(6);
        expect(x).toBeLessThan(cells);
      }
    }),
  );
});

const drawn = (field: TextField, cells: number): string =>
  plain(drawField('name', field, cells, theme).line).trimEnd();

test('is drawn with a mark behind the text, or over the character at the cursor', () => {
  expect(drawn(fieldOf('Cane rocker'), 40)).toBe('name  Cane rocker_');
  const inside = drawField('name', after(fieldOf('Cane rocker'), keys('home')), 40, theme);
  expect(inside.x).toBe(6);
  expect(inside.line.find(({ role }) => role === 'inverse')?.text).toBe('C');
  const bare = drawField('name', after(fieldOf('Cane'), keys('left')), 40, {
    colour: 'bare',
    glyphs: 'ascii',
  });
  expect(plain(bare.line).trimEnd()).toBe('name  Can_e');
});

test('of a long text the part at the cursor is shown', () => {
  const long = fieldOf('abcdefghijklmnopqrstuvwxyz');
  expect(drawn(long, 16)).toBe('name  rstuvwxyz_');
  expect(drawn(after(long, keys('home')), 16)).toBe('name  abcdefghi…');
});

test('what would act on the terminal is written out', () => {
  const field = after(fieldOf(''), typed('a\u001b[2Jb\u202ec'));
  expect(field.text).toBe('a\u001b[2Jb\u202ec');
  expect(drawn(field, 60)).toBe('name  a\\x1b[2Jb\\u202ec_');
});
