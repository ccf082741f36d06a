import type { Metered } from './climate.ts';

/** What `readClimate` makes of a text. */
export type ClimateReading =
  | { readonly ok: true; readonly climate: Metered }
  | {
      readonly ok: false;
      readonly says: string;
      /** Where a figure without its letter could be either: the text written out both ways, the shop's own unit first. */
      readonly could?: readonly [string, string];
    };

/** The unit in which the shop reads its temperatures. */
type Unit = 'C' | 'F';

/** A figure as it was written; `unit` null where none stood beside it. */
type Figure = { readonly value: number; readonly unit: Unit | '%' | null; readonly typed: string };

const examples = { C: 'Write 19C 55%.', F: 'Write 66F 55%.' } as const;

/** Air in which somebody works: beyond these it was a slip of the finger (common practice, no source). */
const coldest = -40;
const hottest = 60;
const driest = 1;
const dampest = 100;

/** A bare figure up to here looks like Celsius to a shop that reads Fahrenheit, and one from there on like Fahrenheit to the other. */
const likeCelsius = 40;
const likeFahrenheit = 45;

const figure =
  /([+-]?\d+(?:[.,]\d+)?)\s*(?:°|º|deg(?:rees?)?)?\s*(?:(celsius|fahrenheit|percent|rh|%|c|f)(?![a-z%])|(?![a-z\d%]))/iy;

/**
 * Reads temperature and relative humidity as a person writes them, in either order: `66F 55%`, `19 C 55 %`, `66 55`,
 * `18.5c, 60`, `18,5 60`. A temperature without a unit is taken in `unit`, unless it looks like the other one: then it
 * asks, because 19 read as Fahrenheit would move every window of the day. After the word `surface` stands the
 * temperature of a surface to be coated: `66F 55% surface 60F`.
 */
export function readClimate(text: string, unit: Unit): ClimateReading {
  const [air = '', ...others] = text.split(/\bsurface\b:?/i);
  const read = readAir(air, unit);
  if (!read.ok) {
    const [own, other] = read.could ?? [];
    const rest = others.length === 0 ? '' : ` surface${others.join('surface')}`;
    return own === undefined || other === undefined
      ? read
      : { ...read, could: [own + rest, other + rest] };
  }
  if (others.length === 0) return read;
  const surface = readSurface(others.join(' '), unit);
  return typeof surface === 'string'
    ? { ok: false, says: surface }
    : { ok: true, climate: { ...read.climate, surfaceC: surface } };
}

/** The surface's temperature in degrees Celsius, or what is wrong with it. */
function readSurface(text: string, unit: Unit): number | string {
  const figures = readFigures(text.trim());
  const [only] = figures ?? [];
  const example = `after "surface" write its temperature: surface ${unit === 'F' ? '60F' : '16C'}.`;
  if (figures?.length !== 1 || only === undefined || only.unit === '%') return example;
  if (only.unit === null && looksLikeOther(only.value, unit))
    return `a surface of ${only.typed} could be ${only.value} F or ${only.value} C: put the letter to it.`;
  const tempC = inCelsius(only.value, only.unit ?? unit);
  return canBeWorkedIn(tempC)
    ? tempC
    : `${only.value} ${only.unit ?? unit} is no surface that anybody coats: ${example}`;
}

function readAir(text: string, unit: Unit): ClimateReading {
  const refuse = (says: string): ClimateReading => ({
    ok: false,
    says: `${says} ${examples[unit]}`,
  });
  const figures = readFigures(text.trim());
  if (figures === null) return refuse(`"${text.trim()}" is no temperature and humidity.`);
  const temperatures = figures.filter(({ unit: written }) => written === 'C' || written === 'F');
  const humidities = figures.filter(({ unit: written }) => written === '%');
  const bare = figures.filter(({ unit: written }) => written === null);
  if (figures.length > 2 || temperatures.length > 1 || humidities.length > 1)
    return refuse(`"${text.trim()}" has more than one temperature and one humidity.`);
  const warmth = temperatures[0] ?? bare.shift();
  const damp = humidities[0] ?? bare.shift();
  if (warmth === undefined)
    return refuse(figures.length === 0 ? 'nothing was given.' : 'the temperature is missing.');
  if (damp === undefined) return refuse('the humidity is missing.');
  if (warmth.unit === null && looksLikeOther(warmth.value, unit)) {
    const written = (letter: Unit): string => `${warmth.value}${letter} ${damp.value}%`;
    const could = [written(unit), written(unit === 'F' ? 'C' : 'F')] as const;
    return {
      ok: false,
      says: `${warmth.typed} could be ${warmth.value} F or ${warmth.value} C: write ${could.join(' or ')}.`,
      could,
    };
  }
  const tempC = inCelsius(
    warmth.value,
    warmth.unit === 'C' || warmth.unit === 'F' ? warmth.unit : unit,
  );
  if (!canBeWorkedIn(tempC))
    return refuse(`${warmth.value} ${warmth.unit ?? unit} is no air that anybody works in.`);
  if (damp.value < driest || damp.value > dampest)
    return refuse(`a humidity of ${damp.value} % can't be: ${driest} to ${dampest}.`);
  return { ok: true, climate: { tempC, rh: damp.value } };
}

/** All figures of a text, or null if anything else stands in it but what separates them. */
function readFigures(text: string): readonly Figure[] | null {
  const found: Figure[] = [];
  let at = 0;
  while (at < text.length) {
    const between = /^(?:[\s,;/]|and\b|at\b)+/i.exec(text.slice(at))?.[0] ?? '';
    at += between.length;
    if (at === text.length) break;
    figure.lastIndex = at;
    const match = figure.exec(text);
    if (match === null) return null;
    const [typed, digits = '', written] = match;
    found.push({
      value: Number(digits.replace(',', '.')),
      unit: unitOf(written),
      typed: typed.trim(),
    });
    at += typed.length;
  }
  return found;
}

function unitOf(written: string | undefined): Figure['unit'] {
  const first = written?.[0]?.toUpperCase();
  if (first === undefined) return null;
  return first === 'C' || first === 'F' ? first : '%';
}

const inCelsius = (value: number, unit: Unit): number =>
  unit === 'F' ? ((value - 32) * 5) / 9 : value;

const canBeWorkedIn = (tempC: number): boolean => tempC >= coldest && tempC <= hottest;

/** Whether a figure without a letter was more likely meant in the unit that is not the shop's. */
function looksLikeOther(value: number, unit: Unit): boolean {
  const looksSo = unit === 'F' ? value <= likeCelsius : value >= likeFahrenheit;
  return looksSo && canBeWorkedIn(inCelsius(value, unit === 'F' ? 'C' : 'F'));
}
