export * from './shop-air.ts';
export * from './span-in-air.ts';
export * from './night-low.ts';
export * from './drying-pace.ts';
