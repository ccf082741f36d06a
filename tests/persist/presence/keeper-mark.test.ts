import { expect, it, vi } from 'vitest';
import {
  isRunning,
  leaveKeeperMark,
  readKeeperMark,
} from '../../../src/persist/presence/keeper-mark.ts';
import { newFolder } from '../places.ts';

it('takes the place of the one that a keeper left that was killed', () => {
  const folder = newFolder();
  leaveKeeperMark(folder, { pid: 1, began: 1000 });
  leaveKeeperMark(folder, { pid: 2, began: 2000 });
  expect(readKeeperMark(folder)).toEqual({ pid: 2, began: 2000 });
});

// kill(2) of the Linux man-pages: EPERM where there is such a process and it is somebody else's, ESRCH where there is none.
it.each([
  ['EPERM', true],
  ['ESRCH', false],
])('knows by %s whether its process runs', (code, runs) => {
  const kill = vi.spyOn(process, 'kill').mockImplementation(() => {
    throw Object.assign(new Error(code), { code });
  });
  try {
    expect(isRunning({ pid: 4711, began: 0 })).toBe(runs);
  } finally {
    kill.mockRestore();
  }
});
