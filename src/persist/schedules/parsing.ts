/**
 * The door for what needs the YAML parser and the forms. It costs tens of milliseconds to load, so the program imports
 * it only when there is YAML to read; the light door is index.ts.
 */
export { jsonSchemas } from './json-schema.ts';
export { productCopyText } from './product-copy.ts';
export { loadSchedules } from './library.ts';
export type { ScheduleSourceFile } from './library.ts';
export { readScheduleFile } from './read-file.ts';
