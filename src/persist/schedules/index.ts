export { readRules } from '../rules/index.ts';
export { readScheduleFolders, rulesBeside } from './folders.ts';
export type { ScheduleLibrary } from './library-types.ts';
export { tellProblem, tellProblems } from './problem.ts';
export type { Problem } from './problem.ts';
