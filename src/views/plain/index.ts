export { plainBench } from './plain-bench.ts';
export { spokenBench } from './spoken-bench.ts';
export type { PlainInput } from './plain-input.ts';
