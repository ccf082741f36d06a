export { bySchedule, type ScheduleLean } from './by-schedule.ts';
export { overTime, type OverTime, type TimeLean } from './over-time.ts';
export { fewestForTrend, trendOf, type Trend } from './trend.ts';
export { pieceOutcomes, type PieceOutcome, type PieceOutcomes } from './piece-outcomes.ts';
export { whereHoursWent, type WhereHoursWent } from './where-hours-went.ts';
export { costliest, type CostlyClass } from './costliest.ts';
