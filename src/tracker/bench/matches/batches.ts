import type { Bench } from '../bench.ts';
import type { Piece, PlannedStep } from '../piece.ts';
import { alikeSteps, isBegun, type AlikeSteps } from './alike-steps.ts';
import { showsInTheEnd } from './coats-of.ts';

/** Two batches of one product on two pieces that should match: their colour and sheen may differ. */
export type BatchDifference = {
  readonly what: 'batch';
  readonly product: string;
  /** What the lids say. */
  readonly there: string;
  readonly here: string;
  /** The other piece is only to get it. */
  readonly toCome: boolean;
};

/** What was put on, or is begun, from different batches; once for all the steps that differ alike. */
export function batchDifferences(
  here: Piece,
  there: Piece,
  pairs: readonly AlikeSteps[],
): readonly BatchDifference[] {
  const told = new Map<string, BatchDifference>();
  for (const pair of pairs) {
    if (!hasBegun(here, pair.here) && !hasBegun(there, pair.there)) continue;
    const found = differenceOf(here, there, pair);
    if (found === null) continue;
    const key = JSON.stringify([found.product, plain(found.there), plain(found.here)]);
    const before = told.get(key);
    told.set(key, before === undefined || before.toCome ? found : before);
  }
  return [...told.values()];
}

/** `4 took batch 7 C of My varnish, this batch 8`. */
export const batchWords = (
  { product, there, here, toCome }: BatchDifference,
  who: string,
): string => `${who} ${toCome ? 'gets' : 'took'} batch ${there} of ${product}, this batch ${here}`;

/** What is to be told of a step before it is begun, while another can may still be opened; null where nothing is. */
export function otherBatch(bench: Bench, here: Piece, step: PlannedStep): string | null {
  if (isBegun(here, step)) return null;
  for (const { piece: id } of here.partners) {
    const there = bench.pieces.get(id);
    if (there === undefined || there.place === 'removed') continue;
    const pair = alikeSteps(here, there).find((each) => each.here?.id === step.id);
    const found = pair === undefined ? null : differenceOf(here, there, { ...pair, here: step });
    if (found !== null) return batchWords(found, String(there.number ?? there.name));
  }
  return null;
}

/** Null also where one of the two has no batch told: nothing is known then. */
function differenceOf(here: Piece, there: Piece, pair: AlikeSteps): BatchDifference | null {
  if (pair.here === null || pair.there === null || !showsInTheEnd(pair.here)) return null;
  if (pair.here.skipped || pair.there.skipped) return null;
  const [own, other] = [productOf(here, pair.here), productOf(there, pair.there)];
  const batches = { here: own?.can?.batch, there: other?.can?.batch };
  if (own === undefined || own.name !== other?.name) return null;
  if (batches.here === undefined || batches.there === undefined) return null;
  if (plain(batches.here) === plain(batches.there)) return null;
  const isToCome = !isBegun(there, pair.there);
  return {
    what: 'batch',
    product: own.name,
    there: batches.there,
    here: batches.here,
    toCome: isToCome,
  };
}

const hasBegun = (piece: Piece, step: PlannedStep | null): boolean =>
  step !== null && isBegun(piece, step);

const productOf = (piece: Piece, { product }: PlannedStep) =>
  product === undefined ? undefined : piece.products[product];

/** Copied from two lids by hand: spaces and capitals don't count. */
const plain = (batch: string): string => batch.replaceAll(/\s+/g, '').toLowerCase();
