import { execFileSync } from 'node:child_process';
import { existsSync, rmSync, statfsSync, truncateSync, writeFileSync } from 'node:fs';
import { basename, join } from 'node:path';

/** In memory, or a file system on a file, which keeps a little room back and breaks off for good. */
export type DiskKind = 'tmpfs' | 'ext4';

/** A disk of its own, for tests and measures alike. Making one needs the right to mount. */
export type SmallDisk = {
  /** Leaves about so many bytes. */
  readonly fillUpTo: (left: number) => void;
  readonly makeRoom: () => void;
  /**
   * From now on the folder takes no new file, as it is for a program that runs: a disk on which files are open for writing
   * can't be mounted anew for reading alone. On ext4 as after a fault of the disk.
   */
  readonly refuse: (folder: string) => void;
  /** Takes that back; an ext4 that broke off stays so. */
  readonly allow: (folder: string) => void;
  readonly unmount: () => void;
};

const run = (program: string, ...words: readonly string[]): string =>
  execFileSync(program, words, { stdio: 'pipe', encoding: 'utf8' });

/**
 * @param folder an empty one
 * @throws where it can't be mounted
 */
export function mountSmallDisk(kind: DiskKind, folder: string, bytes: number): SmallDisk {
  if (process.platform !== 'linux') throw new Error('small disks are only made on Linux');
  const image = `${folder}.image`;
  if (kind === 'tmpfs') run('mount', '-t', 'tmpfs', '-o', `size=${bytes}`, 'tmpfs', folder);
  else {
    writeFileSync(image, '');
    truncateSync(image, bytes);
    run('mkfs.ext4', '-q', '-m', '0', image);
    run('mount', '-o', 'loop,errors=remount-ro', image, folder);
  }
  const filler = join(folder, 'other things');
  return {
    fillUpTo: (left) => {
      const { bavail, bsize } = statfsSync(folder);
      try {
        writeFileSync(filler, Buffer.alloc(Math.max(0, Math.floor(bavail * bsize - left))));
      } catch {
        // What the file system keeps back for itself is not there to be filled: it is full already.
      }
    },
    makeRoom: () => rmSync(filler),
    refuse: (part) => {
      if (kind === 'tmpfs') run('chattr', '+i', part);
      else writeFileSync(faultOf(folder), '1');
    },
    allow: (part) => {
      if (kind === 'tmpfs') run('chattr', '-i', part);
    },
    unmount: () => {
      run('umount', '--lazy', folder);
      if (existsSync(image)) rmSync(image);
    },
  };
}

/** Where the kernel is told that an ext4 has a fault. */
function faultOf(folder: string): string {
  const device = run('findmnt', '--noheadings', '--output', 'SOURCE', folder).trim();
  return join('/sys/fs/ext4', basename(device), 'trigger_fs_error');
}
