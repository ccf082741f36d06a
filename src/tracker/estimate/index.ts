export * from './expected.ts';
export * from './hours.ts';
export * from './finished-hours.ts';
export * from './left-running.ts';
export * from './sample-quantile.ts';
export * from './range-of-sum.ts';
export * from './schedule-figures.ts';
export { expectationOf } from './worked-time.ts';
