import fc from 'fast-check';
import stringWidth from 'string-width';
import { describe, expect, it, test } from 'vitest';
import {
  cut,
  fitEnd,
  fitLine,
  fitStart,
  inRole,
  lineOf,
  lineWidth,
  merged,
  padEnd,
  padStart,
  plain,
  roles,
  segment,
  spread,
  visible,
  width,
  type Line,
} from '../../../src/views/drawing/index.ts';

/** Names of every sort: Latin, wide characters, emoji of one and of several code points, marks, controls, halves of pairs. */
const anyText = fc.oneof(
  fc.string({ unit: 'grapheme', maxLength: 20 }),
  fc.string({ unit: 'binary', maxLength: 12 }),
  fc.string({
    unit: fc.constantFrom(
      'a',
      ' ',
      'é',
      '家',
      '具',
      '한',
      '👩‍🔧',
      '🪑',
      '🇩🇪',
      '1️⃣',
      'e\u0301',
      '\u001b[31m',
      '\u200f',
      '\t',
      'ｱ',
    ),
    maxLength: 12,
  }),
  fc.constantFrom('Oak settle', 'Küchenstuhl', '桐箪笥', '👨‍👩‍👧‍👦 bench'),
);

const anyLine: fc.Arbitrary<Line> = fc.array(
  fc.record({ text: anyText, role: fc.constantFrom(...roles) }),
  { maxLength: 6 },
);

describe('width', () => {
  test.each([
    ['Oak settle', 10],
    ['', 0],
    ['桐箪笥', 6],
    // UAX 11: halfwidth kana one cell, fullwidth Latin two.
    ['ｱ', 1],
    ['Ａ', 2],
    ['e\u0301', 1],
    ['🪑', 2],
    ['👩‍🔧', 2],
    ['🇩🇪', 2],
    ['│··········(████┊████)▒▒▒▒▒▒▒▒', 30],
    ['▶[1] ├─┼●┤ × › … ‹', 18],
    // Written out: \x1b[31m.
    ['\u001b[31m', 8],
  ])('of %s is %i', (text, cells) => {
    expect(width(text)).toBe(cells);
  });

  it('by the quick way is what string-width measures, for every character that takes it', () => {
    for (let code = 0x20; code <= 0x25ff; code += 1) {
      const character = String.fromCharCode(code);
      if (visible(character) !== character) continue;
      expect([code, width(character)]).toEqual([code, stringWidth(character)]);
    }
  });
});

describe('what acts on a terminal', () => {
  test.each([
    ['Oak\u001b]0;title\u0007', 'Oak\\x1b]0;title\\x07'],
    ['\u009b31mred', '\\x9b31mred'],
    ['a\u202egnp.exe', 'a\\u202egnp.exe'],
    ['line\nbreak\ttab\r', 'line\\x0abreak\\x09tab\\x0d'],
    ['half \ud83e', 'half \\ud83e'],
    ['soft\u00adhyphen', 'soft\\xadhyphen'],
  ])('%j is written out', (text, shown) => {
    expect(visible(text)).toBe(shown);
  });

  it('leaves emoji, joiners and marks alone', () => {
    for (const text of [
      '👩‍🔧',
      'e\u0301',
      '1️⃣',
      'نمی\u200cخواهم',
      '🏴\u{e0067}\u{e0062}\u{e0065}\u{e006e}\u{e0067}\u{e007f}',
    ])
      expect(visible(text)).toBe(text);
  });

  it('never comes through, and is written out only once', () => {
    fc.assert(
      fc.property(fc.string({ unit: 'binary' }), (text) => {
        const shown = visible(text);
        // eslint-disable-next-line no-control-regex -- none may be left
        expect(shown).not.toMatch(/[\u0000-\u001f\u007f-\u009f\u202a-\u202e\u2066-\u2069]/);
        expect(visible(shown)).toBe(shown);
        expect(shown.isWellFormed()).toBe(true);
      }),
    );
  });
});

describe('cut and pad', () => {
  test.each([
    ['Music stand', 11, 'Music stand'],
    ['Music stand', 8, 'Music s…'],
    ['Music stand', 1, '…'],
    ['Music stand', 0, ''],
    ['桐箪笥', 5, '桐箪…'],
    // A wide character is never split: a cell stays free.
    ['桐箪笥', 4, '桐…'],
    ['👩‍🔧👩‍🔧', 3, '👩‍🔧…'],
    ['e\u0301e\u0301e\u0301', 2, 'e\u0301…'],
  ])('%s in %i cells is %s', (text, cells, kept) => {
    expect(cut(text, cells)).toBe(kept);
  });

  it('has its own mark in ASCII', () => {
    expect(cut('Music stand', 8, 'ascii')).toBe('Music s~');
  });

  it('pads by cells, not by characters', () => {
    expect(padEnd('桐箪笥', 8)).toBe('桐箪笥  ');
    expect(padStart('桐箪笥', 8)).toBe('  桐箪笥');
    expect(padEnd('long name', 4)).toBe('long name');
    expect(fitEnd('桐箪笥', 4)).toBe('桐… ');
    expect(fitStart('18:30', 8)).toBe('   18:30');
  });

  it('fills exactly its cells whatever the text, and splits nothing that belongs together', () => {
    fc.assert(
      fc.property(anyText, fc.integer({ min: 1, max: 30 }), (text, cells) => {
        expect(width(fitEnd(text, cells))).toBe(cells);
        expect(width(fitStart(text, cells))).toBe(cells);
        const kept = cut(text, cells);
        expect(width(kept)).toBeLessThanOrEqual(cells);
        const whole = [...new Intl.Segmenter().segment(visible(text))].map((each) => each.segment);
        const parts = [...new Intl.Segmenter().segment(kept)].map((each) => each.segment);
        if (kept !== visible(text)) expect(parts.pop()).toBe('…');
        expect(whole.slice(0, parts.length)).toEqual(parts);
      }),
      { numRuns: 300 },
    );
  });
});

describe('a line', () => {
  const row: Line = [
    segment('  2  '),
    segment('Plant stand', 'strong'),
    segment(' try it till', 'go'),
  ];

  it('fits exactly, filled in the role asked for', () => {
    expect(fitLine(row, 30)).toEqual([...row, segment('  ')]);
    expect(fitLine(row, 30, 'blocks', 'loud').at(-1)).toEqual(segment('  ', 'loud'));
    expect(fitLine(row, 28)).toEqual(row);
  });

  it('is cut where it reaches the edge, with a mark also where a segment ends just there', () => {
    expect(plain(fitLine(row, 20))).toBe('  2  Plant stand tr…');
    expect(fitLine(row, 16)).toEqual([segment('  2  '), segment('Plant stan…', 'strong')]);
    expect(plain(fitLine(row, 16, 'ascii'))).toBe('  2  Plant stan~');
  });

  it('takes exactly its cells, whatever stands in it', () => {
    fc.assert(
      fc.property(anyLine, fc.integer({ min: 0, max: 60 }), (line, cells) => {
        expect(lineWidth(fitLine(line, cells))).toBe(cells);
        expect(lineWidth(spread(line, [segment('15 C')], cells))).toBe(cells);
      }),
      { numRuns: 300 },
    );
  });

  it('spreads to both edges; the left part gives way', () => {
    expect(plain(spread(lineOf('14:29  Tue 24 Nov'), lineOf('15 C  65 %'), 30))).toBe(
      '14:29  Tue 24 Nov   15 C  65 %',
    );
    expect(plain(spread(lineOf('14:29  Tue 24 Nov'), lineOf('15 C  65 %'), 20))).toBe(
      '14:29  T… 15 C  65 %',
    );
    expect(plain(spread(lineOf('left'), lineOf('too long'), 5))).toBe('too… ');
    expect(plain(spread(lineOf('left'), [], 6))).toBe('left  ');
  });

  it('joins neighbours of one role and keeps the text', () => {
    fc.assert(
      fc.property(anyLine, (line) => {
        const joined = merged(line);
        expect(joined.map(({ text }) => text).join('')).toBe(line.map(({ text }) => text).join(''));
        expect(joined.every((each, index) => each.role !== joined[index + 1]?.role)).toBe(true);
      }),
    );
  });

  it('can turn into one role as a whole', () => {
    expect(inRole(row, 'loud')).toEqual([segment('  2  Plant stand try it till', 'loud')]);
  });
});
