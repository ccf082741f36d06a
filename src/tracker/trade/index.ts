export * from './climate.ts';
export * from './schedule.ts';
export * from './nearest.ts';
