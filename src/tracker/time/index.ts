export * from './instant.ts';
export * from './duration.ts';
