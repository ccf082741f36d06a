export { readScheduleFolders } from './folders.ts';
export type { ScheduleLibrary } from './library-types.ts';
export { tellProblem } from './problem.ts';
export type { Problem } from './problem.ts';
