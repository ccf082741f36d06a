import { isCalendarDay } from '../../time/index.ts';
import { counted, mostCounted } from '../../trade/counts.ts';
import type { Intent, IntentContext } from '../intents.ts';
import type { NewBenchFact, PieceDescription } from '../facts.ts';
import { accept, refuse, type Outcome } from '../outcome.ts';
import type { Bench, Piece } from '../piece.ts';
import { inHand, piecesOnBench } from '../standing.ts';
import { anywhere, called, factAt, instantOf, isOutcome, onBench, stepOf } from './context.ts';

type Asked<Do extends Intent['do']> = Extract<Intent, { do: Do }>;

/** The lowest number that no piece on the bench wears. */
export function freeNumber(bench: Bench): number {
  const taken = new Set(piecesOnBench(bench).map((piece) => piece.number));
  let number = 1;
  while (taken.has(number)) number += 1;
  return number;
}

const longestName = 80;

export function addPiece(
  bench: Bench,
  intent: Asked<'add piece'>,
  context: IntentContext,
): Outcome {
  const name = intent.name.trim();
  const badName = wrongName(name);
  if (badName !== null) return refuse(`Not added: ${badName}`);
  const { schedule } = intent;
  if (schedule.steps.length === 0)
    return refuse(`Not added: the finishing schedule ${schedule.name} has no steps.`);
  const bad = intent.describe && wrongDescription(intent.describe, context);
  if (bad) return refuse(`Not added: ${bad}`);
  const number = freeNumber(bench);
  const piece = context.group;
  const facts: NewBenchFact[] = [
    factAt(context, {
      kind: 'piece-added',
      body: {
        piece,
        number,
        name,
        schedule: { id: schedule.id, name: schedule.name, hash: schedule.hash },
        steps: schedule.steps,
        products: schedule.products,
      },
    }),
  ];
  if (intent.describe && Object.keys(intent.describe).length > 0) {
    facts.push(
      factAt(context, {
        kind: 'piece-described',
        body: { piece, changes: trimmed(intent.describe) },
      }),
    );
  }
  return accept(facts, `${number} ${name} on the bench`, piece);
}

const wrongName = (name: string): string | null => {
  if (name === '') return 'a piece needs a name.';
  if (name.length <= longestName) return null;
  return `a name has at most ${longestName} letters; this one has ${name.length}.`;
};

/** What is wrong with a description, in words; null if nothing is. */
function wrongDescription(changes: PieceDescription, context: IntentContext): string | null {
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

export function describePiece(
  bench: Bench,
  intent: Asked<'describe piece'>,
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

const trimmed = (changes: PieceDescription): PieceDescription =>
  changes.name === undefined ? changes : { ...changes, name: changes.name.trim() };

const fieldNames: Readonly<Record<string, string>> = {
  areaM2: 'size',
  yearMade: 'year made',
  promised: 'date promised',
};
const fieldName = (field: string): string => fieldNames[field] ?? field;

export function nameParts(
  bench: Bench,
  intent: Asked<'name parts'>,
  context: IntentContext,
): Outcome {
  const piece = onBench(bench, intent.piece, 'Not noted');
  if (isOutcome(piece)) return piece;
  const names = intent.names.map((name) => name.trim()).filter((name) => name !== '');
  const double = names.find((name, index) => names.indexOf(name) !== index);
  if (double !== undefined)
    return refuse(`Not noted: two parts are called "${double}"; give each a name of its own.`);
  const parts = names.map((name, index) => ({
    id: piece.parts.find((part) => part.name === name)?.id ?? `${context.group}-${index + 1}`,
    name,
  }));
  const gone = piece.parts.find(
    (part) => !parts.some((each) => each.id === part.id) && hasRecord(bench, piece, part.id),
  );
  if (gone) return refuse(`Not noted: ${gone.name} has work recorded on it; keep it in the list.`);
  return accept(
    [factAt(context, { kind: 'parts-named', body: { piece: piece.id, parts } })],
    names.length === 0
      ? `no parts on ${called(piece)}`
      : `parts of ${called(piece)}: ${names.join(', ')}`,
    piece.id,
  );
}

const hasRecord = (bench: Bench, piece: Piece, part: string): boolean =>
  [...piece.stamps, ...piece.finishes, ...piece.checks].some((record) => record.part === part) ||
  bench.sessions.some(
    (session) =>
      !session.dropped &&
      session.targets.some((target) => target.piece === piece.id && target.part === part),
  );

export function placeHold(
  bench: Bench,
  intent: Asked<'place hold'>,
  context: IntentContext,
): Outcome {
  const piece = onBench(bench, intent.piece, 'Not on hold');
  if (isOutcome(piece)) return piece;
  const reason = intent.reason.trim();
  if (reason === '')
    return refuse('Not on hold: say what it waits for, so that you are asked for it.');
  if (intent.askAgain !== null && !isCalendarDay(intent.askAgain)) {
    return refuse(`Not on hold: "${intent.askAgain}" is no date; write it as ${context.today}.`);
  }
  if (intent.askAgain !== null && intent.askAgain < context.today) {
    return refuse(`Not on hold: ${intent.askAgain} has passed; ask again on a day to come.`);
  }
  return accept(
    [
      factAt(context, {
        kind: 'hold-placed',
        body: { piece: piece.id, reason, askAgain: intent.askAgain },
      }),
    ],
    `hold on ${called(piece)}: ${reason}`,
    piece.id,
  );
}

export function carryIn(bench: Bench, intent: Asked<'carry in'>, context: IntentContext): Outcome {
  const piece = onBench(bench, intent.piece, 'Not noted');
  if (isOutcome(piece)) return piece;
  return accept(
    [factAt(context, { kind: 'carried-in', body: { piece: piece.id } })],
    `${called(piece)} carried in from the cold`,
    piece.id,
  );
}

export function liftHold(
  bench: Bench,
  intent: Asked<'lift hold'>,
  context: IntentContext,
): Outcome {
  const piece = onBench(bench, intent.piece, 'Not lifted');
  if (isOutcome(piece)) return piece;
  if (piece.hold === null) return refuse(`Not lifted: ${called(piece)} is not on hold.`);
  return accept(
    [factAt(context, { kind: 'hold-lifted', body: { piece: piece.id } })],
    `hold lifted on ${called(piece)}`,
    piece.id,
  );
}

export function takeOffBench(
  bench: Bench,
  intent: Asked<'take off bench'>,
  context: IntentContext,
): Outcome {
  const piece = onBench(bench, intent.piece, 'Not taken off');
  if (isOutcome(piece)) return piece;
  const putDown = puttingDown(bench, piece, context, 'Not taken off');
  if (isOutcome(putDown)) return putDown;
  return accept(
    [...putDown, factAt(context, { kind: 'piece-left-bench', body: { piece: piece.id } })],
    `${called(piece)} off the bench`,
    piece.id,
  );
}

export function putBackOnBench(
  bench: Bench,
  intent: Asked<'put back on bench'>,
  context: IntentContext,
): Outcome {
  const piece = anywhere(bench, intent.piece, 'Not put back');
  if (isOutcome(piece)) return piece;
  if (piece.place === 'bench') return refuse(`Not put back: ${called(piece)} is on the bench.`);
  const number = freeNumber(bench);
  return accept(
    [factAt(context, { kind: 'piece-put-back', body: { piece: piece.id, number } })],
    `${number} ${piece.name} back on the bench`,
    piece.id,
  );
}

export function removePiece(
  bench: Bench,
  intent: Asked<'remove piece'>,
  context: IntentContext,
): Outcome {
  const piece = anywhere(bench, intent.piece, 'Not removed');
  if (isOutcome(piece)) return piece;
  if (piece.place === 'removed') return refuse(`Not removed: ${piece.name} is removed already.`);
  const putDown = puttingDown(bench, piece, context, 'Not removed');
  if (isOutcome(putDown)) return putDown;
  return accept(
    [...putDown, factAt(context, { kind: 'piece-removed', body: { piece: piece.id } })],
    `${called(piece)} removed`,
    piece.id,
  );
}

/** Ends the sessions that hold a piece which leaves, or refuses a time before they began. */
function puttingDown(
  bench: Bench,
  piece: Piece,
  context: IntentContext,
  not: string,
): readonly NewBenchFact[] | Outcome {
  const held = inHand(bench).filter((session) =>
    session.targets.some((target) => target.piece === piece.id),
  );
  if (context.at !== undefined && held.some((session) => session.start > instantOf(context)))
    return refuse(`${not}: ${called(piece)} was picked up after that. Give a later time.`);
  return held.map((session) =>
    factAt(context, { kind: 'put-down', body: { session: session.id } }),
  );
}

export function writeNote(
  bench: Bench,
  intent: Asked<'write note'>,
  context: IntentContext,
): Outcome {
  const piece = anywhere(bench, intent.piece, 'Not noted');
  if (isOutcome(piece)) return piece;
  const text = intent.text.trim();
  if (text === '') return refuse('Not noted: the note is empty.');
  const step = intent.step === null ? null : stepOf(piece, intent.step, 'Not noted');
  if (step !== null && isOutcome(step)) return step;
  return accept(
    [factAt(context, { kind: 'note-written', body: { piece: piece.id, step: intent.step, text } })],
    `note on ${called(piece)}`,
    piece.id,
  );
}
