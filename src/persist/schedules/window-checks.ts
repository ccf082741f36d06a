import { readDuration, type Milliseconds } from '../../tracker/time/index.ts';
import { isGroup } from './explain-issue.ts';
import type { Problem } from './problem.ts';
import { problemAt, type Fields } from './raw-fields.ts';
import type { Path, YamlSource } from './yaml-source.ts';

/** A row of a file that stands for a window, and where it stands. */
type WindowRow = { readonly source: YamlSource; readonly path: Path; readonly row: Fields };

/** A window's times come in their order, and what follows its closing is said. */
export function windowOrder(source: YamlSource, path: Path, row: Fields): readonly Problem[] {
  const window = { source, path, row };
  return [...closingOrder(window), ...gapOrder(window), ...afterClosing(window)];
}

function closingOrder({ source, path, row }: WindowRow): readonly Problem[] {
  const isTooEarly = (['soft', 'hard'] as const).some((wood) => {
    const opens = timeOf(row['opens'], wood);
    const closes = timeOf(row['closes'], wood);
    return opens !== null && closes !== null && closes <= opens;
  });
  if (!isTooEarly) return [];
  return [tooEarly(source, [...path, 'closes'], row['closes'], ['closing', 'its opening'])];
}

function gapOrder({ source, path, row }: WindowRow): readonly Problem[] {
  const gap = row['keep off'];
  if (!isGroup(gap)) return [];
  const problems: Problem[] = [];
  const [from, until, opens] = [timeOf(gap['from']), timeOf(gap['until']), timeOf(row['opens'])];
  if (from !== null && until !== null && until <= from) {
    const what = ['end of the forbidden gap', 'its beginning'] as const;
    problems.push(tooEarly(source, [...path, 'keep off', 'until'], gap['until'], what));
  }
  if (from !== null && opens !== null && from <= opens) {
    const what = ['forbidden gap', 'the opening before it'] as const;
    problems.push(tooEarly(source, [...path, 'keep off', 'from'], gap['from'], what));
  }
  if (row['closes'] !== undefined) {
    const wanted = 'either a closing or a forbidden gap';
    problems.push(
      problemAt(source, [...path, 'closes'], row['closes'], wanted, {
        says: 'The window has both a closing and a forbidden gap.',
        todo: 'Take out "closes"; the gap closes it.',
      }),
    );
  }
  return problems;
}

function afterClosing({ source, path, row }: WindowRow): readonly Problem[] {
  const { closes, then } = row;
  if (closes !== undefined && then === undefined)
    return [
      problemAt(source, [...path, 'closes'], closes, '"then" beside "closes"', {
        says: 'The window closes, but not said is what to do after that.',
        todo: 'Add "then:", such as "then: scuff 320 first".',
      }),
    ];
  if (then !== undefined && closes === undefined)
    return [
      problemAt(source, [...path, 'then'], then, '"closes" beside "then"', {
        says: 'It is said what to do after the closing, but the window never closes.',
        todo: 'Add "closes:" with a length of time, or take out "then".',
      }),
    ];
  return [];
}

/** A written length of time, for a wood where it tells them apart; null for what is none (the schema says so). */
function timeOf(value: unknown, wood: 'soft' | 'hard' = 'hard'): Milliseconds | null {
  const words = isGroup(value) ? value[wood] : value;
  if (typeof words !== 'string') return null;
  const reading = readDuration(words);
  return reading.ok ? reading.ms : null;
}

function tooEarly(
  source: YamlSource,
  path: Path,
  value: unknown,
  [what, before]: readonly [string, string],
): Problem {
  return problemAt(source, path, value, `a time after ${before}`, {
    says: `The ${what} is not after ${before}.`,
    todo: `Write a longer time here, or a shorter one for ${before}.`,
  });
}
