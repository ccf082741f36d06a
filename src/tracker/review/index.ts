export { bySchedule } from './by-schedule.ts';
export { overTime, type OverTime } from './over-time.ts';
export { fewestForTrend, trendOf } from './trend.ts';
export { pieceOutcomes, type PieceOutcome, type PieceOutcomes } from './piece-outcomes.ts';
export {
  reviewOf,
  type BriefLean,
  type BriefOutcome,
  type NamedPiece,
  type Review,
  type StepOff,
} from './review.ts';
export { whereHoursWent, type WhereHoursWent } from './where-hours-went.ts';
export { costliest, type CostlyClass } from './costliest.ts';
