import { minute, type Milliseconds } from '../../time/index.ts';
import type { EdgeSense } from '../../windows/model.ts';
import type { Bench } from '../bench.ts';
import type { Piece, PlannedStep } from '../piece.ts';
import { isDone } from '../progress.ts';
import { alikeSteps, isBegun, type AlikeSteps } from './alike-steps.ts';
import { batchDifferences, type BatchDifference } from './batches.ts';
import { coatsOf, isCoat, passesMade, productName, showsInTheEnd } from './coats-of.ts';
import { dwellsOf } from './dwells.ts';

/** In what two pieces that should match differ so far: `there` is the other piece, `here` this one. */
export type MatchDifference =
  | {
      readonly what: 'product';
      readonly step: string;
      readonly there: string;
      readonly here: string;
    }
  | BatchDifference
  /** Coats on and planned of one product; `toCome` while some of the other piece's are still planned. */
  | {
      readonly what: 'coats';
      readonly product: string | null;
      readonly there: number;
      readonly here: number;
      readonly toCome: boolean;
    }
  | {
      readonly what: 'rounds';
      readonly step: string;
      readonly there: number;
      readonly here: number;
    }
  | {
      readonly what: 'dwell';
      readonly step: string;
      readonly stood: string;
      readonly there: Milliseconds;
      readonly here: Milliseconds;
    }
  /** Done on one, skipped on the other or not among its steps. */
  | {
      readonly what: 'step';
      readonly step: string;
      readonly lacks: 'here' | 'there';
      readonly skipped: boolean;
    };

/** Dwells that differ by less look alike (common practice, no source). */
const dwellShare = 0.2;
const dwellLeast = minute;

/** What was done or begun differently on two pieces, in the order of this one's steps. */
export function matchDifferences(
  bench: Bench,
  here: Piece,
  there: Piece,
  sense: EdgeSense,
): readonly MatchDifference[] {
  const pairs = alikeSteps(here, there);
  const products = pairs.flatMap((pair) => productDifference(here, there, pair));
  const otherwise = new Set(products.flatMap((each) => [each.here, each.there]));
  return [
    ...products,
    ...batchDifferences(here, there, pairs),
    ...coatDifferences(here, there, otherwise),
    ...pairs.flatMap((pair) => [
      ...stepDifference(here, there, pair),
      ...roundsDifference(here, there, pair),
      ...dwellDifferences(bench, here, there, pair, sense),
    ]),
  ];
}

function productDifference(
  here: Piece,
  there: Piece,
  pair: AlikeSteps,
): readonly Extract<MatchDifference, { what: 'product' }>[] {
  if (pair.here === null || pair.there === null) return [];
  if (pair.here.skipped || pair.there.skipped) return [];
  const names = { here: productName(here, pair.here), there: productName(there, pair.there) };
  const isUsed = isBegun(here, pair.here) || isBegun(there, pair.there);
  if (!isUsed || names.here === null || names.there === null || names.here === names.there)
    return [];
  return [{ what: 'product', step: pair.here.name, here: names.here, there: names.there }];
}

/** Counted with what is still planned, as a coat that is to come is no difference yet. */
function coatDifferences(
  here: Piece,
  there: Piece,
  otherwise: ReadonlySet<string>,
): readonly MatchDifference[] {
  const [own, others] = [coatsOf(here), coatsOf(there)];
  return [...new Set([...own.keys(), ...others.keys()])].flatMap((product) => {
    if (product !== null && otherwise.has(product)) return [];
    const none = { on: 0, toCome: 0 };
    const [a, b] = [own.get(product) ?? none, others.get(product) ?? none];
    const counts = { here: a.on + a.toCome, there: b.on + b.toCome };
    if (counts.here === counts.there || a.on + b.on === 0) return [];
    return [{ what: 'coats', product, ...counts, toCome: b.toCome > 0 } as const];
  });
}

function stepDifference(here: Piece, there: Piece, pair: AlikeSteps): readonly MatchDifference[] {
  const step = pair.here ?? pair.there;
  if (step === null || isCoat(step) || !showsInTheEnd(step)) return [];
  const was = {
    here: pair.here !== null && isBegun(here, pair.here),
    there: pair.there !== null && isBegun(there, pair.there),
  };
  if (was.here === was.there) return [];
  const lacks = was.here ? 'there' : 'here';
  const lacking = pair[lacks];
  if (lacking !== null && !lacking.skipped) return [];
  return [{ what: 'step', step: step.name, lacks, skipped: lacking !== null }];
}

/** Bleach rounds and the like, once both are done with them. */
function roundsDifference(here: Piece, there: Piece, pair: AlikeSteps): readonly MatchDifference[] {
  if (pair.here === null || pair.there === null || isCoat(pair.here)) return [];
  if (!isDone(here, pair.here.id, null) || !isDone(there, pair.there.id, null)) return [];
  const counts = {
    here: passesMade(here, pair.here),
    there: passesMade(there, pair.there),
  };
  return counts.here === counts.there ? [] : [{ what: 'rounds', step: pair.here.name, ...counts }];
}

function dwellDifferences(
  bench: Bench,
  here: Piece,
  there: Piece,
  pair: AlikeSteps,
  sense: EdgeSense,
): readonly MatchDifference[] {
  const step: PlannedStep | null = pair.here;
  if (step === null || pair.there === null) return [];
  const others = dwellsOf(bench, there, pair.there, sense);
  return dwellsOf(bench, here, step, sense).flatMap((own) => {
    const other = others.find(({ rule, pass }) => rule === own.rule && pass === own.pass);
    if (other === undefined) return [];
    const least = Math.max(dwellLeast, dwellShare * other.ms);
    if (Math.abs(own.ms - other.ms) <= least) return [];
    const stood = own.agent ?? productName(here, step) ?? step.name;
    return [{ what: 'dwell', step: step.name, stood, there: other.ms, here: own.ms } as const];
  });
}
