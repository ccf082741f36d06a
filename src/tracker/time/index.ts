export * from './instant.ts';
export * from './calendar-day.ts';
export * from './duration.ts';
export * from './read-day.ts';
