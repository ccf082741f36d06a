import { describe, expect, it, test } from 'vitest';
import {
  chooseTheme,
  type TerminalHints,
  type ThemeChoice,
} from '../../../src/views/theme/index.ts';

const choose = (hints: TerminalHints, choice: Partial<ThemeChoice> = {}) =>
  chooseTheme({ colour: 'auto', glyphs: 'auto', ...choice }, hints);

const usual: TerminalHints = {
  TERM: 'xterm-256color',
  COLORTERM: 'truecolor',
  LANG: 'en_GB.UTF-8',
};

describe('colour', () => {
  test.each<[string, TerminalHints, Partial<ThemeChoice>, string]>([
    ['many colours where COLORTERM says so', usual, {}, 'dark'],
    ['24bit says the same', { ...usual, COLORTERM: '24bit' }, {}, 'dark'],
    ['sixteen where it does not', { ...usual, COLORTERM: undefined }, {}, '16 on dark'],
    ['sixteen where it says something else', { ...usual, COLORTERM: 'yes' }, {}, '16 on dark'],
    ['sixteen where nothing is known', {}, {}, '16 on dark'],
    ['a light ground by COLORFGBG', { ...usual, COLORFGBG: '0;15' }, {}, 'light'],
    ['with a word between', { ...usual, COLORFGBG: '0;default;15' }, {}, 'light'],
    ['a dark ground by COLORFGBG', { ...usual, COLORFGBG: '15;0' }, {}, 'dark'],
    ['the ground as the user says', { ...usual, COLORFGBG: '15;0' }, { colour: 'light' }, 'light'],
    [
      'sixteen on the ground as the user says',
      { TERM: 'xterm' },
      { colour: 'light' },
      '16 on light',
    ],
    [
      'sixteen because the user says',
      { ...usual, COLORFGBG: '0;15' },
      { colour: '16' },
      '16 on light',
    ],
    ['none because the user says', usual, { colour: 'none' }, 'none'],
    // no-color.org: "when present and not an empty string (regardless of its value)".
    ['NO_COLOR', { ...usual, NO_COLOR: '1' }, {}, 'none'],
    ['NO_COLOR, whatever its value', { ...usual, NO_COLOR: '0' }, {}, 'none'],
    ['NO_COLOR empty counts as not set', { ...usual, NO_COLOR: '' }, {}, 'dark'],
    // no-color.org: "User-level configuration files [...] should override the NO_COLOR environment variable".
    [
      "the user's own setting before NO_COLOR",
      { ...usual, NO_COLOR: '1' },
      { colour: 'dark' },
      'dark',
    ],
    ['a dumb terminal gets no sequence at all', { ...usual, TERM: 'dumb' }, {}, 'bare'],
    ['whatever is set', { ...usual, TERM: 'dumb' }, { colour: 'dark' }, 'bare'],
  ])('%s', (_, hints, choice, colour) => {
    expect(choose(hints, choice).colour).toBe(colour);
  });
});

describe('glyphs', () => {
  test.each<[string, TerminalHints, string]>([
    ['a UTF-8 locale', { LANG: 'en_GB.UTF-8' }, 'blocks'],
    ['spelled otherwise', { LANG: 'de_DE.utf8' }, 'blocks'],
    ['the C locale with UTF-8', { LANG: 'C.UTF-8' }, 'blocks'],
    ['the C locale', { LANG: 'C' }, 'ascii'],
    ['an older character set', { LANG: 'de_DE.ISO-8859-15@euro' }, 'ascii'],
    ['nothing said', {}, 'blocks'],
    ['LC_ALL before all', { LC_ALL: 'C', LC_CTYPE: 'en_GB.UTF-8', LANG: 'en_GB.UTF-8' }, 'ascii'],
    ['LC_CTYPE before LANG', { LC_CTYPE: 'en_GB.UTF-8', LANG: 'C' }, 'blocks'],
    ['an empty one does not count', { LC_ALL: '', LANG: 'en_GB.UTF-8' }, 'blocks'],
    ['ambiguous widths: Japanese', { LANG: 'ja_JP.UTF-8' }, 'ascii'],
    ['ambiguous widths: Chinese', { LC_ALL: 'zh_TW.UTF-8' }, 'ascii'],
    ['ambiguous widths: Korean', { LC_CTYPE: 'ko_KR.UTF-8', LANG: 'en_US.UTF-8' }, 'ascii'],
    ['the Linux console', { LANG: 'en_GB.UTF-8', TERM: 'linux' }, 'ascii'],
    ['a dumb terminal', { LANG: 'en_GB.UTF-8', TERM: 'dumb' }, 'ascii'],
  ])('%s', (_, hints, glyphs) => {
    expect(choose(hints).glyphs).toBe(glyphs);
  });

  it('are as the user says', () => {
    expect(choose({ LANG: 'C' }, { glyphs: 'blocks' }).glyphs).toBe('blocks');
    expect(choose(usual, { glyphs: 'ascii' }).glyphs).toBe('ascii');
  });
});
