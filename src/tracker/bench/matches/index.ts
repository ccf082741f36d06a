export { batchWords, otherBatch } from './batches.ts';
export * from './differences.ts';
export * from './partners.ts';
