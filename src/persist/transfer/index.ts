export type { Exported } from './exported.ts';
export { exportText } from './export-text.ts';
export { gather } from './gather.ts';
export { putIn } from './put-in.ts';
export { readExport } from './read-export.ts';
