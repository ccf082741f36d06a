import { execFileSync } from 'node:child_process';
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { onTestFinished } from 'vitest';
import { mountSmallDisk, type SmallDisk } from './small-disk.ts';

/** Why this machine lets no test mount a small disk; null if it does. */
export const mountingFails: string | null = (() => {
  if (process.platform !== 'linux') return 'small disks are only made on Linux';
  const folder = mkdtempSync(join(tmpdir(), 'recoat-mount-'));
  try {
    mountSmallDisk('tmpfs', folder, 65_536).unmount();
    return null;
  } catch {
    return 'no right to mount';
  } finally {
    rmSync(folder, { recursive: true });
  }
})();

/** A disk of its own of the given size, in memory, gone when the test ends. */
export function newDisk(
  bytes: number,
): SmallDisk & { readonly folder: string; readonly makeReadOnly: () => void } {
  const folder = mkdtempSync(join(tmpdir(), 'recoat-disk-'));
  const disk = mountSmallDisk('tmpfs', folder, bytes);
  onTestFinished(() => {
    disk.unmount();
    rmSync(folder, { recursive: true });
  });
  return {
    ...disk,
    folder,
    makeReadOnly: () => {
      execFileSync('mount', ['-o', 'remount,ro', folder], { stdio: 'pipe' });
    },
  };
}
