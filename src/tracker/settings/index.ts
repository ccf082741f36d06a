export * from './settings.ts'
