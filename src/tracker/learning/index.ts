export type { LearnedMinutes, TaughtStep } from './learned-minutes.ts';
export { usualPrior, type MinutesPrior } from './minutes-prior.ts';
export { foreseenMinutes } from './minutes-range.ts';
export { nothingLearned, teach } from './teach.ts';
export { foreseenTotal, type ForeseenStep, type Uniform } from './minutes-total.ts';
export * from './drying-times.ts';
export * from './learned-opening.ts';
export { estimatorFrom, fromYou } from './estimator.ts';
export { notTaught, teachBench, notToTeach, type Taught } from './taught-steps.ts';
