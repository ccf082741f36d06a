import { isCalendarDay } from '../../time/index.ts';
import { counted, mostCounted } from '../../trade/counts.ts';
import type { PieceDescription } from '../facts.ts';
import type { Intent, IntentContext } from '../intents.ts';
import { accept, refuse, type Outcome } from '../outcome.ts';
import type { Bench } from '../bench.ts';
import { called, factAt, isOutcome, onBench } from './context.ts';

const longestName = 80;

/** What is wrong with a name, in words; null if nothing is. */
export const wrongName = (name: string): string | null => {
  if (name === '') return 'a piece needs a name.';
  if (name.length <= longestName) return null;
  return `a name has at most ${longestName} letters; this one has ${name.length}.`;
};

/** What is wrong with a description, in words; null if nothing is. */
export function wrongDescription(changes: PieceDescription, context: IntentContext): string | null {
  const { name, areaM2, profile, yearMade, promised } = changes;
  const badName = name === undefined ? null : wrongName(name.trim());
  if (badName !== null) return badName;
  if (areaM2 !== undefined && areaM2 !== null && !(areaM2 > 0 && areaM2 <= 100)) {
    return `a show surface of ${areaM2} m2 is no piece of furniture; give 0.05 to 100.`;
  }
  if (profile && !(profile.share > 0 && profile.share <= 1))
    return `${Math.round(profile.share * 100)} % of a surface can't be ${profile.shape}; give 1 to 100 %.`;
  for (const what of counted) {
    const count = changes[what] ?? 0;
    if (!(Number.isInteger(count) && count >= 0 && count <= mostCounted))
      return `${count} ${what} can't be; give a whole number up to ${mostCounted}.`;
  }
  const thisYear = Number(context.today.slice(0, 4));
  if (
    yearMade !== undefined &&
    yearMade !== null &&
    !(Number.isInteger(yearMade) && yearMade >= 1000 && yearMade <= thisYear)
  ) {
    return `made in ${yearMade}? Give a year up to ${thisYear}.`;
  }
  if (promised !== undefined && promised !== null && !isCalendarDay(promised)) {
    return `"${promised}" is no date; write it as ${context.today}.`;
  }
  return null;
}

/**
 * Tells anything of a piece: its name, size, wood, the day it is promised for. Refused where nothing, or something
 * impossible, is told.
 */
export function describePiece(
  bench: Bench,
  intent: Extract<Intent, { do: 'describe piece' }>,
  context: IntentContext,
): Outcome {
  const piece = onBench(bench, intent.piece, 'Not noted');
  if (isOutcome(piece)) return piece;
  const bad = wrongDescription(intent.changes, context);
  if (bad) return refuse(`Not noted: ${bad}`);
  if (Object.keys(intent.changes).length === 0)
    return refuse('Not noted: nothing was given to note.');
  return accept(
    [
      factAt(context, {
        kind: 'piece-described',
        body: { piece: piece.id, changes: trimmed(intent.changes) },
      }),
    ],
    `${Object.keys(intent.changes).map(fieldName).join(', ')} of ${called(piece)}`,
    piece.id,
  );
}

/** Without the blanks around a name. */
export const trimmed = (changes: PieceDescription): PieceDescription =>
  changes.name === undefined ? changes : { ...changes, name: changes.name.trim() };

const fieldNames: Readonly<Record<string, string>> = {
  areaM2: 'size',
  yearMade: 'year made',
  promised: 'date promised',
};
const fieldName = (field: string): string => fieldNames[field] ?? field;
