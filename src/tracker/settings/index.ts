export * from './settings.ts';
export * from './choose.ts';
export * from './night-low.ts';
export * from './ping-hook.ts';
export * from './quiet-hours.ts';
export * from './shop-hours.ts';
export * from './typed-settings.ts';
