import { execFileSync } from 'node:child_process';
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { onTestFinished } from 'vitest';

const mount = (...words: string[]) => execFileSync('/bin/mount', words, { stdio: 'pipe' });

/** Why this machine lets no test mount a small disk; null if it does. */
export const mountingFails: string | null = (() => {
  if (process.platform !== 'linux') return 'small disks are only made on Linux';
  const folder = mkdtempSync(join(tmpdir(), 'recoat-mount-'));
  try {
    mount('-t', 'tmpfs', '-o', 'size=64k', 'tmpfs', folder);
    execFileSync('/bin/umount', [folder]);
    return null;
  } catch {
    return 'no right to mount';
  } finally {
    rmSync(folder, { recursive: true });
  }
})();

/** A disk of its own of the given size, in memory, gone when the test ends. */
export function newDisk(bytes: number): {
  readonly folder: string;
  readonly makeReadOnly: () => void;
} {
  const folder = mkdtempSync(join(tmpdir(), 'recoat-disk-'));
  mount('-t', 'tmpfs', '-o', `size=${bytes}`, 'tmpfs', folder);
  onTestFinished(() => {
    execFileSync('/bin/umount', ['--lazy', folder]);
    rmSync(folder, { recursive: true });
  });
  return {
    folder,
    makeReadOnly: () => {
      mount('-o', 'remount,ro', folder);
    },
  };
}
