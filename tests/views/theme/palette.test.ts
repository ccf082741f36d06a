import { describe, expect, it, test } from 'vitest';
import { okabeIto, palettes, type Look } from '../../../src/views/theme/index.ts';
import { roles } from '../../../src/views/drawing/index.ts';

/** Relative luminance and contrast ratio by the formulas of WCAG 2.2 (W3C), `#rrggbb` in sRGB. */
function luminance(colour: string): number {
  const [red = 0, green = 0, blue = 0] = [1, 3, 5].map((start) => {
    const channel = Number.parseInt(colour.slice(start, start + 2), 16) / 255;
    return channel <= 0.04045 ? channel / 12.92 : ((channel + 0.055) / 1.055) ** 2.4;
  });
  return 0.2126 * red + 0.7152 * green + 0.0722 * blue;
}

function contrast(one: string, other: string): number {
  const [brighter = 0, darker = 0] = [luminance(one), luminance(other)].sort((a, b) => b - a);
  return (brighter + 0.05) / (darker + 0.05);
}

const black = '#000000';
const white = '#FFFFFF';
/** WCAG 2.2, success criterion 1.4.3: contrast for text at level AA. */
const readable = 4.5;

it('measures contrast as the W3C does', () => {
  expect(contrast(black, white)).toBeCloseTo(21, 10);
  // Greys on white at the two sides of 4.5, as commonly quoted with the criterion.
  expect(contrast('#767676', white)).toBeGreaterThan(4.5);
  expect(contrast('#777777', white)).toBeLessThan(4.5);
});

test.each([
  [okabeIto.skyBlue, black, 9.1],
  [okabeIto.orange, black, 9.3],
  [okabeIto.vermillion, black, 5.4],
  [okabeIto.purple, black, 6.9],
  [okabeIto.blue, white, 5.2],
])('%s on %s has contrast %d', (colour, ground, ratio) => {
  expect(Number(contrast(colour, ground).toFixed(1))).toBe(ratio);
});

describe.each([
  ['dark', black],
  ['light', white],
] as const)('on a %s ground', (colour, terminal) => {
  test.each(roles)('%s can be read', (role) => {
    const { ink, ground }: Look = palettes[colour][role];
    if (typeof ink !== 'string') return expect(ground).toBeUndefined();
    return expect(contrast(ink, typeof ground === 'string' ? ground : terminal)).toBeGreaterThan(
      readable,
    );
  });
});

it('would not be readable as ink on white, but for the blue', () => {
  for (const colour of [okabeIto.skyBlue, okabeIto.orange, okabeIto.vermillion, okabeIto.purple]) {
    expect(contrast(colour, white)).toBeLessThan(readable);
  }
});

it('uses no colour where there is none', () => {
  for (const role of roles) {
    const look: Look = palettes.none[role];
    expect(look.ink).toBeUndefined();
    expect(look.ground).toBeUndefined();
  }
});

test.each(['dark', 'light', '16 on dark', '16 on light'] as const)(
  'tells what is lost apart: %s',
  (colour) => {
    const looks = (['go', 'work lost', 'spoils', 'keep off', 'text'] as const).map((role) =>
      JSON.stringify(palettes[colour][role]),
    );
    expect(new Set(looks).size).toBe(looks.length);
  },
);
