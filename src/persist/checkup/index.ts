export { examineBackups } from './examine-backups.ts';
export { examineFiles } from './examine-files.ts';
export { examineFolder } from './examine-folder.ts';
export { examineLock } from './examine-lock.ts';
export { findingsAbout, type Finding } from './finding.ts';
