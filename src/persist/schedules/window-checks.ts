import { readDuration, type Milliseconds } from '../../tracker/time/index.ts';
import { isGroup } from './explain-issue.ts';
import type { Problem } from './problem.ts';
import { problemAt, type Fields } from './raw-fields.ts';
import type { Path, YamlSource } from './yaml-source.ts';

/** A window's times come in their order, and what follows its closing is said. */
export function windowOrder(source: YamlSource, path: Path, row: Fields): readonly Problem[] {
  const problems: Problem[] = [];
  const gap = isGroup(row['keep off']) ? row['keep off'] : null;
  for (const wood of ['soft', 'hard'] as const) {
    const opens = timeOf(row['opens'], wood);
    const closes = timeOf(row['closes'], wood);
    if (opens !== null && closes !== null && closes <= opens) {
      problems.push(tooEarly(source, [...path, 'closes'], row['closes'], 'closing', 'its opening'));
      break;
    }
  }
  if (gap !== null) {
    const [from, until, opens] = [timeOf(gap['from']), timeOf(gap['until']), timeOf(row['opens'])];
    if (from !== null && until !== null && until <= from) {
      problems.push(
        tooEarly(
          source,
          [...path, 'keep off', 'until'],
          gap['until'],
          'end of the forbidden gap',
          'its beginning',
        ),
      );
    }
    if (from !== null && opens !== null && from <= opens) {
      problems.push(
        tooEarly(
          source,
          [...path, 'keep off', 'from'],
          gap['from'],
          'forbidden gap',
          'the opening before it',
        ),
      );
    }
    if (row['closes'] !== undefined) {
      problems.push(
        problemAt(
          source,
          [...path, 'closes'],
          row['closes'],
          'either a closing or a forbidden gap',
          {
            says: 'The window has both a closing and a forbidden gap.',
            todo: 'Take out "closes"; the gap closes it.',
          },
        ),
      );
    }
  }
  if (row['closes'] !== undefined && row['then'] === undefined) {
    problems.push(
      problemAt(source, [...path, 'closes'], row['closes'], '"then" beside "closes"', {
        says: 'The window closes, but not said is what to do after that.',
        todo: 'Add "then:", such as "then: scuff 320 first".',
      }),
    );
  }
  if (row['then'] !== undefined && row['closes'] === undefined) {
    problems.push(
      problemAt(source, [...path, 'then'], row['then'], '"closes" beside "then"', {
        says: 'It is said what to do after the closing, but the window never closes.',
        todo: 'Add "closes:" with a length of time, or take out "then".',
      }),
    );
  }
  return problems;
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
  what: string,
  before: string,
): Problem {
  return problemAt(source, path, value, `a time after ${before}`, {
    says: `The ${what} is not after ${before}.`,
    todo: `Write a longer time here, or a shorter one for ${before}.`,
  });
}
