export * from './expected.ts';
