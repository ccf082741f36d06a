export * from './settings.ts';
export * from './choose.ts';
export * from './night-low.ts';
