export type { LearnedMinutes, TaughtStep } from './learned-minutes.ts';
export { usualPrior, type MinutesPrior } from './minutes-prior.ts';
export { foreseenMinutes } from './minutes-range.ts';
export { nothingLearned, teach } from './teach.ts';
export { foreseenTotal } from './minutes-total.ts';
export * from './drying-times.ts';
export * from './learned-opening.ts';
export { coatsKeptOut, withCoatsOf, type DriedCoat } from './dried-coats.ts';
export { dryingChance, dryingOfProduct, type MilestoneDrying } from './product-drying.ts';
export { dryingBook, dryingTimesFrom, type DryingBook } from './drying-book.ts';
export { estimatorFrom, fromYou } from './estimator.ts';
export { whatIf, type ClassChange, type MinutesIntent } from './what-if.ts';
export {
  lessonsOf,
  notTaught,
  notToTeach,
  teachBench,
  teachImports,
  type Lesson,
  type Taught,
} from './taught-steps.ts';
export { backTest, firstSteps, judgedRow, type BackTest, type BackTestRow } from './back-test.ts';
