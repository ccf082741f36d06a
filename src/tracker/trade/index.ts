export * from './climate.ts';
export * from './schedule.ts';
export * from './nearest.ts';
export * from './read-climate.ts';
export * from './usual-work.ts';
export * from './troubles.ts';
