export { readScheduleFolders } from './folders.ts';
export type { ScheduleFolders } from './folders.ts';
export type {
  Provenance,
  Replacement,
  ScheduleLibrary,
  ShippedTemplates,
} from './library-types.ts';
export { tellProblem } from './problem.ts';
export type { Problem } from './problem.ts';
