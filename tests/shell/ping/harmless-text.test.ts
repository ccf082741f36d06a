import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { harmlessLine } from '../../../src/shell/ping/harmless-text.ts';
import { anyText } from './support/any-text.ts';

describe('text that leaves the program', () => {
  it('keeps plain words, accents and emoji of several code points', () => {
    expect(harmlessLine('Kommode groß, façade 👩‍🔧', 80)).toBe('Kommode groß, façade 👩‍🔧');
  });

  it('takes whole escape sequences out, not only their first character', () => {
    expect(harmlessLine('Oak \u001b[31mred\u001b[0m \u001b]0;title\u0007chest', 80)).toBe(
      'Oak red chest',
    );
  });

  it('puts several lines on one', () => {
    expect(harmlessLine(' wipe off \r\n\n  then\tB on\u2028now ', 80)).toBe(
      'wipe off - then B on - now',
    );
  });

  it('takes out what turns the writing direction', () => {
    expect(harmlessLine('chest\u202egnp\u2066', 80)).toBe('chestgnp');
  });

  it('takes out what nobody sees, and leaves what joins an emoji', () => {
    expect(harmlessLine('ch\u00ade\u200bst\u2060 \ufff9👩\u200d🔧', 80)).toBe('chest 👩\u200d🔧');
  });

  it('ends a text that is too long in an ellipsis, never within a character', () => {
    expect(harmlessLine('🪑🪑🪑🪑', 3)).toBe('🪑🪑…');
    expect(harmlessLine('abcd', 4)).toBe('abcd');
  });

  it('holds for any text: one line, no control characters, well formed, within the limit', () => {
    fc.assert(
      fc.property(anyText(60), fc.integer({ min: 1, max: 40 }), (text, most) => {
        const line = harmlessLine(text, most);
        expect(line).not.toMatch(/[\p{Cc}\p{Zl}\p{Zp}]/u);
        expect(line.isWellFormed()).toBe(true);
        expect(Array.from(line).length).toBeLessThanOrEqual(most);
      }),
    );
  });
});
