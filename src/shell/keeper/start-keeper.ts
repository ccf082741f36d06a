import { spawn } from 'node:child_process';
import { join } from 'node:path';
import type { World } from '../world.ts';

/**
 * Starts a keeper that outlives this process and its terminal. It finds out itself whether it is needed: where another
 * is there, or nothing runs, it ends at once.
 * @returns false where it can't be started
 */
export function startKeeper(world: World, folder: string): boolean {
  const entry = join(world.packageFolder, 'dist', 'start.cjs');
  try {
    const child = spawn(process.execPath, [entry, 'keep', '--folder', folder], {
      detached: true,
      stdio: 'ignore',
      cwd: world.home,
      env: world.env,
      windowsHide: true,
    });
    // Where it could not be started the screen says so when it finds no keeper; an unheard error would end this process.
    child.on('error', () => {});
    child.unref();
    return child.pid !== undefined;
  } catch {
    return false;
  }
}
