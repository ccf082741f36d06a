export * from './palette.ts';
export * from './theme.ts';
export * from './paint.ts';
