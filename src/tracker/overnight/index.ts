export * from './dues.ts';
export * from './before-you-go.ts';
export * from './questions.ts';
