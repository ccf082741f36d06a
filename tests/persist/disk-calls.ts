import fs from 'node:fs';
import { syncBuiltinESMExports } from 'node:module';
import { dirname } from 'node:path';

/**
 * Listens to what is asked of the disk, from the moment it is imported: before anything else, since some libraries keep
 * the functions that they find.
 */
type Call =
  | { readonly did: 'wrote' | 'synced'; readonly path: string }
  /** A file or folder got this name; `from` is the one it had, where it had one. */
  | { readonly did: 'named'; readonly path: string; readonly from: string | null };

let calls: Call[] = [];
const pathOf = new Map<number, string>();
const real = { ...fs };

fs.openSync = (path, ...rest) => {
  const opened = real.openSync(path, ...rest);
  pathOf.set(opened, String(path));
  return opened;
};
fs.writeSync = ((opened: number, ...rest: [string]) => {
  calls.push({ did: 'wrote', path: pathOf.get(opened) ?? '' });
  return real.writeSync(opened, ...rest);
}) as typeof fs.writeSync;
fs.writeFileSync = (path, ...rest) => {
  const name = typeof path === 'number' ? pathOf.get(path) : String(path);
  calls.push({ did: 'wrote', path: name ?? '' });
  // Where it is asked to, it syncs by the function below.
  real.writeFileSync(path, ...rest);
};
fs.copyFileSync = (from, to, ...rest) => {
  real.copyFileSync(from, to, ...rest);
  calls.push({ did: 'wrote', path: String(to) });
};
fs.fsyncSync = (opened) => {
  real.fsyncSync(opened);
  calls.push({ did: 'synced', path: pathOf.get(opened) ?? '' });
};
fs.renameSync = (from, to) => {
  real.renameSync(from, to);
  calls.push({ did: 'named', path: String(to), from: String(from) });
};
fs.mkdirSync = ((path: string, options?: fs.MakeDirectoryOptions) => {
  const first = real.mkdirSync(path, options);
  if (first !== undefined)
    for (let made = path; made.length >= first.length; made = dirname(made))
      calls.push({ did: 'named', path: made, from: null });
  return first;
}) as typeof fs.mkdirSync;
syncBuiltinESMExports();

/**
 * What a power cut could take of all that was done since the last question: bytes that were not synced before their file
 * got its name, and names whose folder was not synced afterwards (fsync(2) of the Linux man-pages: syncing a file does
 * not bring its entry in the folder to the disk; that takes a sync of the folder).
 */
export function couldBeLost(): readonly string[] {
  const done = calls;
  calls = [];
  const isSyncedBetween = (path: string, from: number, to: number): boolean =>
    done.slice(from, to).some((call) => call.did === 'synced' && call.path === path);
  return done.flatMap((call, place) => {
    if (call.did !== 'named') return [];
    const { path, from } = call;
    const written = done
      .slice(0, place)
      .findLastIndex(({ did, path: each }) => did === 'wrote' && each === from);
    return [
      ...(written >= 0 && !isSyncedBetween(from ?? '', written, place) ? [`bytes of ${path}`] : []),
      ...(isSyncedBetween(dirname(path), place, done.length) ? [] : [`name of ${path}`]),
    ];
  });
}

/** Whether anything was named at all: else nothing was heard. */
export const namesHeard = (): readonly string[] =>
  calls.flatMap((call) => (call.did === 'named' ? [call.path] : []));
