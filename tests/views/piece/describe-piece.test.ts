import fc from 'fast-check';
import { expect, test } from 'vitest';
import { nothingCounted } from '../../../src/tracker/trade/index.ts';
import { areaWords, describe, readDescription } from '../../../src/views/piece/describe-piece.ts';

const today = '2026-11-24';
const unknown = {
  kind: null,
  wood: null,
  areaM2: null,
  profile: null,
  ...nothingCounted,
  yearMade: null,
  promised: null,
} as const;
const stool = {
  kind: 'stool',
  wood: 'hard',
  areaM2: 0.9,
  profile: { shape: 'turned', share: 0.3 },
  fittings: 8,
  joints: 0,
  drawers: null,
  yearMade: 1950,
  promised: '2026-11-28',
} as const;

const read = (
  text: string,
  piece: Parameters<typeof describe>[0] = unknown,
  lengths: 'mm' | 'in' = 'mm',
) => {
  const reading = readDescription(text, piece, lengths, today);
  return reading.ok ? reading.changes : reading.says;
};

test('a line tells everything at once, in any order', () => {
  expect(read('hard, 0.9 m2, 1950, promised 28 Nov, kind stool')).toEqual({
    wood: 'hard',
    areaM2: 0.9,
    yearMade: 1950,
    promised: '2026-11-28',
    kind: 'stool',
  });
  expect(read('carved, 12 m2')).toEqual({ profile: { shape: 'carved', share: 1 }, areaM2: 12 });
  expect(read('30% turned')).toEqual({ profile: { shape: 'turned', share: 0.3 } });
  expect(read('1 drawer, 3 joints, no fittings')).toEqual({ drawers: 1, joints: 3, fittings: 0 });
  expect(read('turned 130 %')).toMatch(/^"turned 130 %" is no wood, size, profile/);
  expect(read('Kind  dining chair, by Sat, softwood, about 1,2 m2, made about 1900')).toEqual({
    kind: 'dining chair',
    promised: '2026-11-28',
    wood: 'soft',
    areaM2: 1.2,
    yearMade: 1900,
  });
});

test('what is left as it stands changes nothing; what is gone is taken away; a name renames', () => {
  expect(describe(stool, 'mm')).toBe(
    'hardwood, 0.9 m2, turned 30 %, 8 fittings, no joints, made 1950, promised 28 Nov 2026, kind stool',
  );
  expect(read(describe(stool, 'mm'), stool)).toEqual({});
  expect(
    read('hardwood, 0.9 m2, turned 30 %, 8 fittings, promised 28 Nov, kind stool', stool),
  ).toEqual({
    joints: null,
    yearMade: null,
  });
  expect(read('', stool)).toEqual({
    kind: null,
    wood: null,
    areaM2: null,
    profile: null,
    fittings: null,
    joints: null,
    yearMade: null,
    promised: null,
  });
  expect(read(`${describe(stool, 'mm')}, name Elm stool`, stool)).toEqual({ name: 'Elm stool' });
});

// A foot is 0.3048 m exactly (international foot; NIST SP 811, appendix B, from memory): a square foot is 0.09290304 m2.
test('square feet are read and shown where the shop measures in inches', () => {
  expect(areaWords(0.09290304, 'in')).toBe('1 sq ft');
  expect(areaWords(1.9, 'in')).toBe('20.5 sq ft');
  const changes = read('10 sq ft', unknown, 'in');
  expect(changes).toEqual({ areaM2: 0.929 });
  expect(read('20 ft2')).toEqual({ areaM2: 1.8581 });
});

test('an area that was told in square metres is not changed by being shown in square feet', () => {
  fc.assert(
    fc.property(
      fc.double({ min: 0.05, max: 100, noNaN: true }),
      fc.constantFrom('mm', 'in'),
      (areaM2, lengths) => {
        const piece = { ...unknown, areaM2 };
        expect(read(describe(piece, lengths), piece, lengths)).toEqual({});
      },
    ),
  );
});

test.each([
  [
    'blue',
    '"blue" is no wood, size, profile, count, year, date or kind. Write hard, 0.9 m2, turned 30 %, 8 fittings, made 1950, promised 28 Nov, kind stool.',
  ],
  ['0.9', '"0.9" is no wood, size, profile, count, year, date or kind.'],
  ['hard, soft', '"soft" comes second: one of each will do.'],
  ['promised soon', '"soon" is no day.'],
  ['promised 31 Nov', '"31 Nov" is on no calendar.'],
])('refuses %j', (text, says) => {
  expect(read(text)).toContain(says);
});
