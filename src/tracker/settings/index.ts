export * from './settings.ts';
export * from './choose.ts';
export type { ActKeys } from './choose-keys.ts';
