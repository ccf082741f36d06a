import { normalQuantile } from '../estimate/normal-quantile.ts';
import { sampleQuantile } from '../estimate/sample-quantile.ts';
import type { LearnedMinutes, TaughtStep } from './learned-minutes.ts';
import { usualPrior, type MinutesPrior } from './minutes-prior.ts';
import { exactShare, hasOwnRanges, residualPool } from './minutes-range.ts';
import { outlookOn, type Outlook } from './outlook.ts';
import { studentQuantile } from './student-quantile.ts';
import { cutOut, rootOf } from './symmetric.ts';

/** A step that is still to come. */
export type ForeseenStep = Pick<TaughtStep, 'stepClass' | 'scheduled'>;

/** Gives numbers from 0 up to 1, each as likely as any. */
export type Uniform = () => number;

const usualDraws = 800;

/**
 * The minutes that several steps together stay below with chance `p` (0..1). Drawn jointly: in each draw this person is
 * slow or fast over all, and in each class of work, and every step has its own luck besides. Adding up the ends of the
 * steps' ranges would make the range two to three times too wide, and drawing each step alone too narrow. The same for the
 * same numbers from `uniform`. A step without scheduled minutes counts as nothing.
 */
export function foreseenTotal(
  learned: LearnedMinutes,
  steps: readonly ForeseenStep[],
  uniform: Uniform,
  { draws = usualDraws, prior = usualPrior }: { draws?: number; prior?: MinutesPrior } = {},
): (p: number) => number {
  const outlooks = steps.flatMap(({ stepClass, scheduled }): Known[] => {
    const outlook = outlookOn(learned, prior, stepClass, scheduled);
    return outlook === null ? [] : [{ ...outlook, stepClass }];
  });
  const shared = sharedLuck(learned, outlooks, prior);
  const own = ownLuck(learned, prior);
  const totals: number[] = [];
  for (let draw = 0; draw < draws; draw++) {
    const lean = shared(uniform);
    const ofPiece = Math.sqrt(prior.sharedOnPiece) * normalQuantile(uniform());
    totals.push(
      outlooks.reduce((sum, outlook, i) => sum + own(outlook, lean[i] ?? 0, ofPiece, uniform), 0),
    );
  }
  totals.sort((a, b) => a - b);
  return (p) => sampleQuantile(totals, p) ?? 0;
}

type Known = Outlook & { readonly stepClass: string };

/** Draws how far each step is off because the coefficients are not known for certain: alike for steps of one class. */
function sharedLuck(
  { covariance }: LearnedMinutes,
  outlooks: readonly Known[],
  prior: MinutesPrior,
): (uniform: Uniform) => readonly number[] {
  const places = [...new Set(outlooks.flatMap(({ regressors }) => regressors.map(({ at }) => at)))];
  const root = rootOf(cutOut(covariance, places));
  const newClasses = [
    ...new Set(outlooks.flatMap(({ place, stepClass }) => (place < 0 ? [stepClass] : []))),
  ];
  const spread = Math.sqrt(outlooks[0]?.commonVariance ?? 0);
  const regressors = outlooks.map((outlook) =>
    outlook.regressors.map(({ at, value }) => ({ at: places.indexOf(at), value })),
  );
  return (uniform) => {
    const luck = root.map(() => normalQuantile(uniform()));
    const off = root.map((row) => row.reduce((sum, value, j) => sum + value * (luck[j] ?? 0), 0));
    const ofNew = newClasses.map(() => normalQuantile(uniform()) / Math.sqrt(prior.classWorth));
    return outlooks.map(({ stepClass, place }, i) => {
      const known = (regressors[i] ?? []).reduce(
        (sum, { at, value }) => sum + value * (off[at] ?? 0),
        0,
      );
      return spread * (known + (place < 0 ? (ofNew[newClasses.indexOf(stepClass)] ?? 0) : 0));
    });
  };
}

/** Draws the minutes of one step, given how far its centre is off. */
function ownLuck(
  learned: LearnedMinutes,
  prior: MinutesPrior,
): (outlook: Outlook, lean: number, ofPiece: number, uniform: Uniform) => number {
  const share = exactShare(learned, prior);
  const pool = hasOwnRanges(learned) ? residualPool(learned) : null;
  const alone = Math.sqrt(1 - prior.sharedOnPiece);
  return ({ centre, ownVariance, degrees, scheduled }, lean, ofPiece, uniform) => {
    if (uniform() < share) return Math.exp(scheduled);
    const luck = uniform();
    const residual =
      pool === null
        ? studentQuantile(Math.max(luck, 1e-9), degrees)
        : (pool[Math.floor(luck * pool.length)] ?? 0);
    return Math.exp(centre + lean + Math.sqrt(ownVariance) * (ofPiece + alone * residual));
  };
}
