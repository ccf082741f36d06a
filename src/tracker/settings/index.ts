export * from './settings.ts';
export * from './choose.ts';
