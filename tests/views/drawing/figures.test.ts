import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { largeFigures, width } from '../../../src/views/drawing/index.ts';

const picture = (text: string, rows: 3 | 5, glyphs: 'blocks' | 'ascii'): string =>
  largeFigures(text, rows, glyphs)
    .map((row) => row.trimEnd())
    .join('\n');

const drawn = (...rows: string[]): string => rows.join('\n');

describe('large figures', () => {
  it('stand three rows high on the bench', () => {
    expect(picture('0:40', 3, 'blocks')).toBe(
      drawn('▄▀▀▄ ▄ █  █ ▄▀▀▄', '█  █ ▄ ▀▀▀█ █  █', ' ▀▀       ▀  ▀▀'),
    );
  });

  it('spell verbs and clocks in the far view', () => {
    expect(picture('B on', 3, 'blocks')).toBe(
      drawn('█▀▀▄    █▀▀█ █▄  █', '█▀▀▄    █  █ █ ▀▄█', '▀▀▀     ▀▀▀▀ ▀   ▀'),
    );
    expect(picture('16:42', 3, 'blocks')).toBe(
      drawn(' ▄█  ▄▀▀  ▄ █  █ ▀▀▀▄', '  █  █▀▀▄ ▄ ▀▀▀█ ▄▀▀', ' ▀▀▀  ▀▀       ▀ ▀▀▀▀'),
    );
    expect(picture('5 pass 4 7:40', 3, 'blocks')).toBe(
      drawn(
        '█▀▀▀    █▀▀▄ ▄▀▀▄ ▄▀▀▀ ▄▀▀▀    █  █    ▀▀▀█ ▄ █  █ ▄▀▀▄',
        '▀▀▀▄    █▀▀  █▀▀█  ▀▀▄  ▀▀▄    ▀▀▀█     ▄▀  ▄ ▀▀▀█ █  █',
        '▀▀▀     ▀    ▀  ▀ ▀▀▀  ▀▀▀        ▀     ▀        ▀  ▀▀',
      ),
    );
  });

  it('stand five rows high in the far view, two columns a dot', () => {
    expect(picture('0:40', 5, 'blocks')).toBe(
      drawn(
        '  ████        ██    ██    ████',
        '██    ██  ██  ██    ██  ██    ██',
        '██    ██      ████████  ██    ██',
        '██    ██  ██        ██  ██    ██',
        '  ████              ██    ████',
      ),
    );
    expect(picture('2', 5, 'blocks')).toBe(drawn('██████', '      ██', '  ████', '██', '████████'));
  });

  it('are drawn with # in ASCII, digits and letters alike', () => {
    expect(picture('0123456789:', 5, 'ascii')).toBe(
      drawn(
        ' ##    #  ###  ###  #  # ####  ##  ####  ##   ##',
        '#  #  ##     #    # #  # #    #       # #  # #  # #',
        '#  #   #   ##   ##  #### ###  ###    #   ##   ###',
        '#  #   #  #       #    #    # #  #  #   #  #    # #',
        ' ##   ### #### ###     # ###   ##   #    ##   ##',
      ),
    );
    expect(picture('on', 5, 'ascii')).toBe(
      drawn('#### #   #', '#  # ##  #', '#  # # # #', '#  # #  ##', '#### #   #'),
    );
  });

  it('are drawn with strokes in ASCII where there are three rows', () => {
    expect(picture('0:47', 3, 'ascii')).toBe(
      drawn(' _         _', '| | . |_|   |', '|_| .   |   |'),
    );
  });

  it('spell the letters of the verbs as they are given', () => {
    expect(picture('abcdefghiklm', 3, 'blocks')).toBe(
      drawn(
        '▄▀▀▄ █▀▀▄ ▄▀▀▀ █▀▀▄ █▀▀▀ █▀▀▀ ▄▀▀▀ █  █ ▀█▀ █ ▄▀ █    █▄ ▄█',
        '█▀▀█ █▀▀▄ █    █  █ █▀▀  █▀▀  █ ▀█ █▀▀█  █  █▀▄  █    █ ▀ █',
        '▀  ▀ ▀▀▀   ▀▀▀ ▀▀▀  ▀▀▀▀ ▀     ▀▀▀ ▀  ▀ ▀▀▀ ▀  ▀ ▀▀▀▀ ▀   ▀',
      ),
    );
    expect(picture('noprstuwy', 3, 'blocks')).toBe(
      drawn(
        '█▄  █ █▀▀█ █▀▀▄ █▀▀▄ ▄▀▀▀ ▀▀█▀▀ █  █ █   █ ▀▄ ▄▀',
        '█ ▀▄█ █  █ █▀▀  █▀█   ▀▀▄   █   █  █ █▄▀▄█   █',
        '▀   ▀ ▀▀▀▀ ▀    ▀  ▀ ▀▀▀    ▀    ▀▀  ▀   ▀   ▀',
      ),
    );
  });

  it('give way to plain letters where a sign is not drawn', () => {
    expect(largeFigures('ölen', 3, 'blocks')).toEqual(['    ', 'ölen', '    ']);
    expect(largeFigures('塗', 5, 'blocks')).toEqual(['  ', '  ', '塗', '  ', '  ']);
    expect(largeFigures('try it', 3, 'ascii')).toEqual(['      ', 'try it', '      ']);
    expect(largeFigures('a\u001b', 3, 'blocks')[1]).toBe('a\\x1b');
    expect(largeFigures('', 3, 'blocks')).toEqual(['', '', '']);
  });

  it('keep their width while they count down', () => {
    for (const [rows, glyphs] of [
      [3, 'blocks'],
      [5, 'blocks'],
      [3, 'ascii'],
      [5, 'ascii'],
    ] as const) {
      const widths = new Set<number>();
      for (let seconds = 599; seconds >= 0; seconds -= 1) {
        const text = `${Math.floor(seconds / 60)}:${String(seconds % 60).padStart(2, '0')}`;
        for (const row of largeFigures(text, rows, glyphs)) widths.add(width(row));
      }
      expect(widths.size).toBe(1);
    }
  });

  it('have their rows and one width, whatever the text', () => {
    fc.assert(
      fc.property(
        fc.string({ unit: 'grapheme', maxLength: 8 }),
        fc.constantFrom(3, 5),
        fc.constantFrom('blocks', 'ascii'),
        (text, rows, glyphs) => {
          const figures = largeFigures(text, rows, glyphs);
          expect(figures).toHaveLength(rows);
          expect(new Set(figures.map(width)).size).toBe(1);
        },
      ),
    );
  });

  it('draw no two signs alike', () => {
    const signs = [...'0123456789ABCDEFGHIJKLMNPQRSTUVWXYZ'];
    for (const rows of [3, 5] as const) {
      const pictures = signs.map((sign) => largeFigures(sign, rows, 'blocks').join('\n'));
      const doubles = signs.filter((_, index) => pictures.indexOf(pictures[index] ?? '') !== index);
      expect(doubles).toEqual([]);
    }
  });
});
