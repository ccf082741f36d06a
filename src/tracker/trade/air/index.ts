export * from './saturation.ts';
export * from './humidity.ts';
export * from './pace.ts';
export * from './air-needs.ts';
