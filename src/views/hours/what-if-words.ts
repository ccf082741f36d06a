import type { Bench } from '../../tracker/bench/index.ts';
import { whatIf, type ClassChange, type MinutesIntent } from '../../tracker/learning/index.ts';
import { times } from '../format/index.ts';

/** So many classes are named; a whole piece may touch twenty. */
const mostNamed = 2;

/**
 * What a change would do to expected minutes: `strip would become 1.2 times instead of 1.4`, `strip stays at 1.4 times`.
 * Null where nothing can be told.
 */
export function whatIfWords(bench: Bench, intent: MinutesIntent): string | null {
  const changes = whatIf(bench, intent);
  if (changes === null) return null;
  const [first] = changes;
  if (first === undefined) return 'teaches nothing: no step';
  const moved = changes.filter(isSeen);
  if (moved.length === 0)
    return changes.length === 1
      ? `${first.stepClass} stays at ${times(first.after)}`
      : 'expected minutes stay as they are';
  const named = moved.slice(0, mostNamed).map(changeWords);
  const more = moved.length - named.length;
  return [...named, ...(more > 0 ? [`${more} more change`] : [])].join(', ');
}

const changeWords = ({ stepClass, before, after }: ClassChange, index: number): string =>
  `${stepClass} ${index === 0 ? 'would become ' : ''}${times(after)} instead of ${before.toFixed(1)}`;

/** Told to a tenth, so what moves less doesn't move. */
const isSeen = ({ before, after }: ClassChange): boolean => before.toFixed(1) !== after.toFixed(1);
