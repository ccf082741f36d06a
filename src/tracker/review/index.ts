export { bySchedule } from './by-schedule.ts';
export { overTime } from './over-time.ts';
export { fewestForTrend, trendOf } from './trend.ts';
export { pieceOutcomes } from './piece-outcomes.ts';
export {
  reviewOf,
  type BriefLean,
  type BriefOutcome,
  type Review,
  type StepOff,
} from './review.ts';
export { whereHoursWent, type WhereHoursWent } from './where-hours-went.ts';
export { costliest } from './costliest.ts';
