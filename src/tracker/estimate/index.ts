export * from './expected.ts'
