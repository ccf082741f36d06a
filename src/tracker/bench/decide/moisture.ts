import { wrongMoisture } from '../../trade/read-moisture.ts';
import type { MoistureSpot, NewBenchFact } from '../facts.ts';
import type { Intent, IntentContext } from '../intents.ts';
import { accept, refuse, type Outcome } from '../outcome.ts';
import { moistureFindings } from '../moisture.ts';
import type { Bench } from '../bench.ts';
import type { MoistureReading, Piece } from '../piece.ts';
import { called, factAt, instantOf, isOutcome, onBench, stepOf } from './context.ts';

/** What a moisture meter showed. The air as last read is kept with it. */
export function readMoistureOf(
  bench: Bench,
  intent: Extract<Intent, { do: 'read moisture' }>,
  context: IntentContext,
): Outcome {
  const piece = onBench(bench, intent.piece, 'Not noted', intent.part);
  if (isOutcome(piece)) return piece;
  const step = intent.step ?? null;
  if (step !== null) {
    const found = stepOf(piece, step, 'Not noted');
    if (isOutcome(found)) return found;
  }
  const told: readonly (readonly [MoistureSpot, number | undefined])[] = [
    ['untouched', intent.untouched],
    ['wood', intent.wood],
  ];
  const facts: NewBenchFact[] = [];
  const readings: MoistureReading[] = [];
  for (const [spot, percent] of told) {
    if (percent === undefined) continue;
    const wrong = wrongMoisture(percent);
    if (wrong !== null) return refuse(`Not noted: ${wrong}`);
    const reading = { part: intent.part, step, spot, percent, air: context.air };
    readings.push({ ...reading, fact: context.group, at: instantOf(context) });
    const body = { piece: piece.id, ...reading };
    facts.push(factAt(context, { kind: 'moisture-read', body }));
  }
  if (facts.length === 0)
    return refuse('Not noted: no figure was given. Give what the meter showed, in percent.');
  const words = told.flatMap(([spot, percent]) =>
    percent === undefined ? [] : [`${spot} ${percent} %`],
  );
  const read = `${words.toReversed().join(', ')} on ${called(piece)}`;
  return accept(
    facts,
    read + verdict({ ...piece, moisture: [...piece.moisture, ...readings] }, intent.part),
    piece.id,
  );
}

/** What it comes to with the new readings, where there is something to hold them against. */
function verdict(piece: Piece, part: string | null): string {
  const finding = moistureFindings(piece, null).find((each) => each.part === part);
  const { over = null, isDryEnough = null } = finding ?? {};
  if (over === null || isDryEnough === null) return '';
  return isDryEnough ? ': dry enough to coat' : `: ${Number(over.toFixed(1))} over what is at rest`;
}
