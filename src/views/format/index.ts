export * from './zone.ts';
export * from './days.ts';
export * from './clock.ts';
export * from './lengths.ts';
export * from './ranges.ts';
export * from './air.ts';
export * from './window-words.ts';
export * from './call-words.ts';
export { stateCells } from './kind-words.ts';
