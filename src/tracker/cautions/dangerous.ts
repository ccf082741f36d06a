import { openPots, potCalled } from '../bench/pot-window.ts';
import { piecesOnBench } from '../bench/standing.ts';
import type { Piece, PlannedStep } from '../bench/piece.ts';
import type { DangerousPair, TradeRules } from '../trade/caution-rules.ts';
import { capital } from './capital.ts';
import type { Caution } from './caution.ts';
import {
  chemicalsOf,
  chemicalsOfClass,
  leftOn,
  wetOn,
  type Left,
  type Moment,
} from './chemicals.ts';

/**
 * What must never meet what the step puts on: over the piece's whole history, whatever the order, and beside what is wet
 * on any other piece. What was rinsed out is still said, but does not count as deadly.
 */
export function dangerousMeetings(
  piece: Piece,
  step: PlannedStep,
  moment: Moment,
): readonly Caution[] {
  const own = chemicalsOf(piece, step, moment.rules).map(({ name }) => name);
  if (own.length === 0) return [];
  const here = leftOn(piece, step, moment).flatMap((left) =>
    pairsWith(left.chemical.name, own, moment.rules).map((pair) => onThisPiece(pair, left)),
  );
  const beside = piecesOnBench(moment.bench)
    .filter(({ id }) => id !== piece.id)
    .flatMap((other) =>
      wetOn(other, moment).flatMap((left) =>
        pairsWith(left.chemical.name, own, moment.rules).map((pair) =>
          onAnother(pair, left, other),
        ),
      ),
    );
  const pots = openPots(moment.bench).flatMap((pot) =>
    chemicalsOfClass(pot.product.productClass, moment.rules).flatMap(({ name }) =>
      pairsWith(name, own, moment.rules).map((pair) => inAPot(pair, name, potCalled(pot))),
    ),
  );
  const within = moment.rules.pairs
    .filter(({ of }) => of.every((name) => own.includes(name)))
    .map((pair): Caution => ({
      ...alike(pair),
      deadly: true,
      says: `${capital(pair.of[0])} and ${pair.of[1]} in one step: together they make ${pair.makes}. ${capital(pair.instead)}.`,
    }));
  return onePerPair([...within, ...here, ...beside, ...pots]);
}

const pairsWith = (
  name: string,
  own: readonly string[],
  { pairs }: TradeRules,
): readonly DangerousPair[] =>
  pairs.filter(
    ({ of: [a, b] }) => (a === name && own.includes(b)) || (b === name && own.includes(a)),
  );

const otherOf = ({ of: [a, b] }: DangerousPair, name: string): string => (a === name ? b : a);

const alike = (pair: DangerousPair) => ({
  id: `pair: ${pair.of.join(', ')}`,
  ofTheMoment: true,
  source: pair.source,
});

function onThisPiece(pair: DangerousPair, { chemical: { name }, work, ended }: Left): Caution {
  const other = otherOf(pair, name);
  return ended
    ? {
        ...alike(pair),
        deadly: false,
        says: `${capital(name)} was on this piece (${work.step.name}) and was rinsed. With ${other} it makes ${pair.makes}: in doubt rinse again first.`,
      }
    : {
        ...alike(pair),
        deadly: true,
        says: `${capital(name)} is on this piece (${work.step.name}), not rinsed out. With ${other} it makes ${pair.makes}. First: ${pair.instead}.`,
      };
}

const onAnother = (
  pair: DangerousPair,
  { chemical: { name }, work }: Left,
  { number, name: called }: Piece,
): Caution => ({
  ...alike(pair),
  deadly: true,
  says: `${capital(name)} is wet on ${number ?? ''} ${called} (${work.step.name}). With ${otherOf(pair, name)} it makes ${pair.makes}. Not beside each other, no rag, pad or pail for both.`,
});

const inAPot = (pair: DangerousPair, name: string, pot: string): Caution => ({
  ...alike(pair),
  deadly: true,
  says: `${capital(name)} stands open (${pot}). With ${otherOf(pair, name)} it makes ${pair.makes}. Wash it out first, and keep the two apart.`,
});

/** Of several meetings of one pair the deadly one, and the first of those: it is said once. */
function onePerPair(all: readonly Caution[]): readonly Caution[] {
  const kept = new Map<string, Caution>();
  for (const each of all) {
    const before = kept.get(each.id);
    if (before === undefined || (each.deadly && !before.deadly)) kept.set(each.id, each);
  }
  return [...kept.values()];
}
