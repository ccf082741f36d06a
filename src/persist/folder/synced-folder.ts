import { existsSync } from 'node:fs';
import { dirname, join } from 'node:path';

/** Folder names that programs which keep folders alike on several machines give to theirs. */
const names = [
  /^(my )?(dropbox|nextcloud|owncloud|seafile|syncthing|pclouddrive|pcloud drive|megasync|mega)( ?\(.+\))?$/,
  /^(onedrive( ?- ?.+)?|google ?drive|googledrive-.+|my drive|box|box sync|sync|proton ?drive)$/,
  /^(icloud ?drive|mobile documents|com~apple~clouddocs|cloudstorage|yandex\.?disk)$/,
];

/** What they leave in the folder that they keep. */
const marks = [
  '.stfolder',
  '.dropbox',
  '.dropbox.cache',
  '.sync',
  '.owncloudsync.log',
  '.nextcloudsync.log',
];

/**
 * Whether the folder lies in one that some program copies to other machines. Such a program replaces files behind the
 * back of every lock, so two machines that write lose one's work.
 *
 * @param exists asks the disk; replaced in tests
 */
export function looksSynced(
  folder: string,
  exists: (path: string) => boolean = existsSync,
): boolean {
  const steps = folder.toLowerCase().split(/[/\\]+/);
  if (steps.some((step) => names.some((name) => name.test(step)))) return true;
  for (let at = folder; ; at = dirname(at)) {
    if (marks.some((mark) => exists(join(at, mark)))) return true;
    if (dirname(at) === at) return false;
  }
}
