import { windowsOf } from '../bench/piece-windows.ts';
import type { Bench } from '../bench/bench.ts';
import type { Piece, PlannedStep } from '../bench/piece.ts';
import { hour, type Instant } from '../time/index.ts';
import { speaksOf, type Chemical, type TradeRules } from '../trade/caution-rules.ts';
import { stateAt } from '../windows/evaluate.ts';
import type { EdgeSense } from '../windows/model.ts';
import { onceAStep } from './once-a-step.ts';
import { productOf, worksOf, type Work } from './works.ts';

/** What is asked of a bench at one moment. */
export type Moment = {
  readonly bench: Bench;
  readonly rules: TradeRules;
  readonly now: Instant;
  readonly sense: EdgeSense;
};

/** A chemical in the wood of a piece. */
export type Left = {
  readonly chemical: Chemical;
  readonly work: Work;
  /** Something that takes it out was put on and finished since. */
  readonly ended: boolean;
};

/** Wet that long where no window tells (common practice, no source: a rinse dries in a day). */
const usuallyDryAfter = 24 * hour;

/** The chemicals that products of a class are or hold, by the rules; capitals don't count. */
export function chemicalsOfClass(
  productClass: string,
  { chemicals }: TradeRules,
): readonly Chemical[] {
  const wanted = productClass.toLowerCase();
  return chemicals.filter(({ products }) => products.some((each) => each.toLowerCase() === wanted));
}

/** What a step puts on: by the class of its product, and by the words of its name. */
export const chemicalsOf = onceAStep((piece, step, rules): readonly Chemical[] => {
  const ofProduct = chemicalsOfClass(productOf(piece, step)?.productClass ?? '', rules);
  return rules.chemicals.filter(
    (each) => ofProduct.includes(each) || speaksOf(step.name, each.words),
  );
});

/** What was ever put on a piece by other steps and may still be there, newest use of each, over its whole history. */
export function leftOn(piece: Piece, but: PlannedStep | null, moment: Moment): readonly Left[] {
  const { bench, rules } = moment;
  const works = worksOf(bench, piece);
  const left = new Map<string, Left>();
  for (const work of works) {
    const chemicals = chemicalsOf(piece, work.step, rules);
    if (work.done) endBy(chemicals, left);
    if (work.step.id === but?.id) continue;
    for (const chemical of chemicals) left.set(chemical.name, { chemical, work, ended: false });
  }
  return [...left.values()].filter(
    ({ chemical, work }) => !chemical.goneWhenDry || isWet(piece, work, moment),
  );
}

/** Marks what was left before and what these take out. */
function endBy(chemicals: readonly Chemical[], left: Map<string, Left>): void {
  for (const [name, each] of left)
    if (chemicals.some((chemical) => each.chemical.endedBy.includes(chemical.name)))
      left.set(name, { ...each, ended: true });
}

/** What is wet on a piece now, or stands mixed beside it. */
export const wetOn = (piece: Piece, moment: Moment): readonly Left[] =>
  leftOn(piece, null, moment).filter(
    ({ work, ended }) => !ended && (work.inHand || isWet(piece, work, moment)),
  );

function isWet(piece: Piece, { step, at, inHand }: Work, { bench, now, sense }: Moment): boolean {
  if (inHand) return true;
  const windows = windowsOf(bench, piece, sense).filter(
    ({ subject }) => subject.stepId === step.id,
  );
  const hasOpenPot = windows.some(
    ({ rule, closedAt }) => rule.kind === 'pot' && (closedAt === null || closedAt > now),
  );
  if (hasOpenPot) return true;
  const drying = windows.filter(
    ({ rule }) => rule.milestone === 'dry' || rule.milestone === 'recoat',
  );
  // A step that needs it may have begun early: what counts is the time, not that the window was closed.
  if (drying.length > 0)
    return drying.some((window) => stateAt({ ...window, closedAt: null }, now) === 'before');
  return now - at < usuallyDryAfter;
}
