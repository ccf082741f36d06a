export * from './differences.ts';
export * from './partners.ts';
