import { bad, type StoreProblem } from '../result.ts';
import { errorCode } from './identity.ts';

/** Puts what the system said about a failed write into words. */
export function writeProblem(path: string, error: unknown): StoreProblem {
  const code = errorCode(error);
  const problem = (kind: StoreProblem['kind'], says: string, todo: string) =>
    bad(kind, path, `Not stored: ${says}`, todo).problem;
  switch (code) {
    case 'ENOSPC':
    case 'EDQUOT':
      return problem(
        'full',
        `there is no room left for ${path}.`,
        'Make room on that disk, then do this again.',
      );
    case 'ENOENT':
      return problem(
        'gone',
        `the folder of ${path} is not there any more.`,
        'Put it back, or start recoat again.',
      );
    case 'EACCES':
    case 'EPERM':
      return problem(
        'unwritable',
        `you have no right to write ${path}.`,
        'Check whose the folder is, and its rights.',
      );
    case 'EROFS':
      return problem(
        'unwritable',
        `${path} is on a disk that can only be read.`,
        'Use a folder on another disk.',
      );
    default:
      return problem(
        'unwritable',
        `${path} could not be written (${code || String(error)}).`,
        'Check the disk and the folder, then do this again.',
      );
  }
}
