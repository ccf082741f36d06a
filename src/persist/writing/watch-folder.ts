import { watch, type FSWatcher } from 'node:fs';
import { liveFiles } from '../folder/names.ts';

/** A write touches several names within a few milliseconds; they are looked at once. */
const settleMs = 50;
/** How often to look where the system has no watcher left to give. */
const lookMs = 1000;

const liveNames = new Set(liveFiles.map(({ name }) => `${name}.json`));

/**
 * Calls back when the files' fingerprint changed and it was not this process that changed them.
 *
 * @param fingerprint of the files as they are now
 * @param ownFingerprint as it was after this process last wrote
 */
export function watchFolder(
  folder: string,
  fingerprint: () => string,
  ownFingerprint: () => string,
  listener: () => void,
): () => void {
  let last = fingerprint();
  let settling: NodeJS.Timeout | undefined;
  let looking: NodeJS.Timeout | undefined;
  let watcher: FSWatcher | undefined;

  const look = () => {
    settling = undefined;
    const now = fingerprint();
    if (now === last) return;
    last = now;
    if (now !== ownFingerprint()) listener();
  };
  const lookAgainAndAgain = () => {
    watcher?.close();
    watcher = undefined;
    looking ??= setInterval(look, lookMs).unref();
  };
  try {
    watcher = watch(folder, { persistent: false }, (_event, name) => {
      if (name !== null && !liveNames.has(name)) return;
      settling ??= setTimeout(look, settleMs).unref();
    });
    watcher.on('error', lookAgainAndAgain);
  } catch {
    lookAgainAndAgain();
  }
  return () => {
    watcher?.close();
    clearTimeout(settling);
    clearInterval(looking);
  };
}
