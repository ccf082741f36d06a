import fc from 'fast-check';
import { expect, test } from 'vitest';
import { readClimate } from '../../../src/tracker/trade/index.ts';
import { air } from '../../../src/views/format/index.ts';

const read = (text: string, unit: 'C' | 'F'): { readonly tempC: number; readonly rh: number } => {
  const reading = readClimate(text, unit);
  if (!reading.ok) throw new Error(reading.says);
  return reading.climate;
};

const saysOf = (text: string, unit: 'C' | 'F'): string => {
  const reading = readClimate(text, unit);
  return reading.ok ? `read as ${JSON.stringify(reading.climate)}` : reading.says;
};

test.each([
  ['66F 55%', 'F'],
  ['66F 55%', 'C'],
  ['66 55', 'F'],
  ['55% 66F', 'F'],
  ['66f/55 rh', 'C'],
  ['66 °F, 55 %', 'C'],
  ['66F55%', 'C'],
  ['66 degrees F and 55 percent', 'C'],
] as const)('reads %s in a shop that reads %s as 66 F and 55 %%', (text, unit) => {
  const { tempC, rh } = read(text, unit);
  expect(tempC).toBeCloseTo(18.889, 3);
  expect(rh).toBe(55);
});

test.each([
  ['19C 55 %', 'F', 19, 55],
  ['18.5c, 60', 'F', 18.5, 60],
  ['18,5 60', 'C', 18.5, 60],
  ['18,5C 60%', 'C', 18.5, 60],
  ['19 55', 'C', 19, 55],
  ['-5 50', 'C', -5, 50],
  ['-5C 50', 'F', -5, 50],
] as const)('reads %s in a shop that reads %s', (text, unit, tempC, rh) => {
  expect(read(text, unit)).toEqual({ tempC, rh });
});

// Fixed points of the two scales: ice 32 F = 0 C, and both alike at -40; the factor 5/9 of NIST SP 811 appendix B.9 (from memory).
test.each([
  ['32F 50', 0],
  ['-40F 50', -40],
  ['50F 50', 10],
  ['86F 50', 30],
  ['140F 50', 60],
])('%s is %d C', (text, tempC) => {
  expect(read(text, 'F').tempC).toBeCloseTo(tempC, 9);
});

test.each([
  ['', 'F', 'nothing was given. Write 66F 55%.'],
  ['66', 'F', 'the humidity is missing. Write 66F 55%.'],
  ['18,60', 'C', 'the humidity is missing. Write 19C 55%.'],
  ['55%', 'C', 'the temperature is missing. Write 19C 55%.'],
  ['warm and dry', 'C', '"warm and dry" is no temperature and humidity. Write 19C 55%.'],
  ['19K 55', 'C', '"19K 55" is no temperature and humidity. Write 19C 55%.'],
  ['12x 55', 'C', '"12x 55" is no temperature and humidity. Write 19C 55%.'],
  ['66F 120 %', 'F', "a humidity of 120 % can't be: 1 to 100. Write 66F 55%."],
  ['19C 0%', 'C', "a humidity of 0 % can't be: 1 to 100. Write 19C 55%."],
  ['-300 F 50', 'F', '-300 F is no air that anybody works in. Write 66F 55%.'],
  ['300 50', 'C', '300 C is no air that anybody works in. Write 19C 55%.'],
  ['19C 66F', 'C', '"19C 66F" has more than one temperature and one humidity. Write 19C 55%.'],
  ['19 20 55', 'C', '"19 20 55" has more than one temperature and one humidity. Write 19C 55%.'],
] as const)('refuses %j in %s', (text, unit, says) => {
  expect(saysOf(text, unit)).toBe(says);
});

test('asks where a figure without its letter looks like the other unit', () => {
  expect(saysOf('19 55', 'F')).toBe('19 could be 19 F or 19 C: write 19F 55% or 19C 55%.');
  expect(saysOf('66 55', 'C')).toBe('66 could be 66 F or 66 C: write 66C 55% or 66F 55%.');
  expect(read('41 55', 'F').tempC).toBeCloseTo(5, 9);
  expect(read('19F 55', 'F').tempC).toBeCloseTo(-7.222, 3);
});

test('reads what the screen itself writes', () => {
  fc.assert(
    fc.property(
      fc.integer({ min: -20, max: 50 }),
      fc.integer({ min: 1, max: 100 }),
      fc.constantFrom('C', 'F'),
      fc.constantFrom('C', 'F'),
      (tempC, rh, written, shop) => {
        const climate = read(air({ tempC, rh }, written), shop);
        expect(Math.abs(climate.tempC - tempC)).toBeLessThan(0.5);
        expect(climate.rh).toBe(rh);
      },
    ),
  );
});

test('never fails, whatever is typed', () => {
  fc.assert(
    fc.property(fc.string({ unit: 'grapheme' }), fc.constantFrom('C', 'F'), (text, unit) => {
      const reading = readClimate(text, unit);
      if (!reading.ok) expect(reading.says).toMatch(/Write (66F|19C) 55%\.$/);
      else expect(reading.climate.rh).toBeGreaterThan(0);
    }),
  );
});

test.each([
  ['66F 55% surface 60F', 'F', 15.556],
  ['66F 55% surface 60', 'F', 15.556],
  ['66F 55%, Surface: 16C', 'F', 16],
  ['19 55 surface 16', 'C', 16],
] as const)('reads the surface of %s in a shop that reads %s', (text, unit, surfaceC) => {
  const reading = readClimate(text, unit);
  expect(reading.ok ? reading.climate.surfaceC : reading.says).toBeCloseTo(surfaceC, 2);
});

test.each([
  ['66F 55% surface', 'F', 'after "surface" write its temperature: surface 60F.'],
  ['66F 55% surface cold', 'F', 'after "surface" write its temperature: surface 60F.'],
  ['66F 55% surface 60%', 'F', 'after "surface" write its temperature: surface 60F.'],
  ['66F 55% surface 16', 'F', 'a surface of 16 could be 16 F or 16 C: put the letter to it.'],
  [
    '19C 55% surface 90C',
    'C',
    '90 C is no surface that anybody coats: after "surface" write its temperature: surface 16C.',
  ],
] as const)('refuses the surface of %s', (text, unit, says) => {
  expect(saysOf(text, unit)).toBe(says);
});

test('a figure that could be either is offered both ways, with its surface', () => {
  const reading = readClimate('20 55 surface 60F', 'F');
  expect(reading).toMatchObject({
    ok: false,
    could: ['20F 55% surface 60F', '20C 55% surface 60F'],
  });
});
