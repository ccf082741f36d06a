import type { FactStore } from '../../persist/index.ts';
import type { LearnedFile, YearPrint, YearsTaught } from '../../persist/learned/learned-file.ts';
import { foldBench, type ImportedHours } from '../../tracker/bench/index.ts';
import type { Reading } from '../../tracker/trade/index.ts';
import { notTaught, teachBench, teachImports, withCoatsOf } from '../../tracker/learning/index.ts';
import { airSense, type AirSense } from '../../tracker/windows/index.ts';

/** Who reads the history of a year. */
export type YearReader = Pick<FactStore, 'readHistory'>;

/** What is learned from, beside the years themselves. */
export type ToLearn = {
  readonly years: readonly YearPrint[];
  /** Pieces that are not to teach. */
  readonly except: readonly string[];
  readonly imports: readonly ImportedHours[];
  readonly readings: readonly Reading[];
};

export const nothingYet: YearsTaught = { ...notTaught, dried: [] };
export const nothingLearnedYet: LearnedFile = {
  years: [],
  except: [],
  earlier: nothingYet,
  whole: nothingYet,
  imports: [],
  onImports: notTaught,
};

/** Learns from the history; of years that were learned before only what has to be. */
export function learnHistory(
  reader: YearReader,
  { years, except, imports, readings }: ToLearn,
  before: LearnedFile,
): LearnedFile {
  const lessons = { years, except, air: airSense({ readings, nightLowC: null }) };
  const past = { ...lessons, years: years.slice(0, -1) };
  const earlier = earlierYears(past.years, except, before) ?? teachYears(reader, past, nothingYet);
  const whole = teachYears(reader, { ...lessons, years: years.slice(-1) }, earlier);
  const onImports =
    imports.length === 0
      ? whole
      : teachYears(reader, lessons, { ...teachImports(notTaught, imports), dried: [] });
  return { years, except, earlier, whole, imports: imports.map(({ id }) => id), onImports };
}

type Lessons = {
  readonly years: readonly YearPrint[];
  readonly except: readonly string[];
  readonly air: AirSense;
};

/** All years but the last, where they are what they were: the last one grew, or a new one began. */
function earlierYears(
  past: readonly YearPrint[],
  except: readonly string[],
  before: LearnedFile,
): YearsTaught | null {
  if (!isSame(except, before.except)) return null;
  if (isSame(past, before.years)) return before.whole;
  return isSame(past, before.years.slice(0, -1)) ? before.earlier : null;
}

/** A year that can't be read teaches nothing; the screens that need it say so. */
function teachYears(
  reader: YearReader,
  { years, except, air }: Lessons,
  from: YearsTaught,
): YearsTaught {
  return years.reduce((taught, { year }) => {
    const history = reader.readHistory(year);
    if (!history.ok) return taught;
    const bench = foldBench(history.value.facts);
    return {
      ...teachBench(taught, bench, except),
      dried: withCoatsOf(taught.dried, bench, air, except),
    };
  }, from);
}

export const isSame = (one: unknown, other: unknown): boolean =>
  JSON.stringify(one) === JSON.stringify(other);
