import { isDeepStrictEqual } from 'node:util';
import { makeFolder } from '../file/durable.ts';
import { writeProblem } from '../file/write-problem.ts';
import { benchFile, filePath, settingsFile } from '../folder/names.ts';
import { openLock } from '../lock/lock.ts';
import { presentForm } from '../file/form.ts';
import type { OpenOptions } from '../open-store.ts';
import { assemble, fingerprintOnDisk, readParts, type Parts } from '../reading/assemble.ts';
import { isWritable, readHistory } from '../reading/careful.ts';
import { historyYears } from '../reading/history-years.ts';
import { bad, good, type Notice, type Result } from '../result.ts';
import { readSettings, storedSettings } from '../settings/read-settings.ts';
import type { FactStore, Loaded } from '../store.ts';
import { appended } from './appended.ts';
import { backUpOnceADay } from './backups.ts';
import { holdFiles, type Rewriting } from './held-files.ts';
import { moveToHistory } from './move-to-history.ts';
import { removeOrphans } from './remove-orphans.ts';
import { watchFolder } from './watch-folder.ts';

/** Opens the store for reading and writing; makes the folder if it isn't there. */
export function openDiskStore(
  folder: string,
  { clock, form = presentForm }: OpenOptions,
): Result<FactStore> {
  try {
    makeFolder(folder);
  } catch (error) {
    return { ok: false, problem: writeProblem(folder, error) };
  }
  if (!isWritable(folder)) return readOnly(folder);

  const notices: Notice[] = [];
  const tell = (notice: Notice) => {
    if (!notices.some(({ says }) => says === notice.says)) notices.push(notice);
  };
  const lock = openLock(folder);
  const files = holdFiles({ folder, form, clock }, tell);
  const stops = new Set<() => void>();
  let ownFingerprint = '';

  const loadedFrom = (parts: Parts): Loaded => {
    const { loaded, settings } = assemble(folder, parts);
    settings.notices.forEach(tell);
    return loaded;
  };
  /** The lock must be held. */
  const current = (): Result<Loaded> => {
    const parts = readParts<never>(files.current);
    return parts.ok ? good(loadedFrom(parts.value)) : parts;
  };
  const rewrite = (rewritings: readonly Rewriting[]): Result<void> => {
    if (rewritings.some(({ file }) => file === benchFile)) {
      const failure = backUpOnceADay(folder, clock.today());
      if (failure) tell(failure);
    }
    const written = files.rewrite(rewritings);
    ownFingerprint = fingerprintOnDisk(folder);
    return written;
  };
  const settingsNow = () => {
    const stored = files.current(settingsFile);
    return stored.ok
      ? good(readSettings(stored.value.contents, filePath(folder, settingsFile)))
      : stored;
  };

  const opened = lock.hold(() => {
    const first = current();
    // Only then: of a newer store nothing may be touched.
    if (first.ok) removeOrphans(folder);
    return first;
  });
  if (!opened.ok) {
    lock.close();
    return opened;
  }

  const load = (): Result<Loaded> => {
    const parts = readParts<null>(files.seen);
    if (!parts.ok) return parts;
    return parts.value === null ? lock.hold(current) : good(loadedFrom(parts.value));
  };

  return good({
    folder,
    load,
    readSettings() {
      const loaded = load();
      return loaded.ok ? good(loaded.value.settings) : loaded;
    },
    change: (decide) =>
      lock.hold(() => {
        const before = current();
        if (!before.ok) return before;
        const { append, result } = decide(before.value);
        const rewritings = appended(before.value, append);
        if (rewritings.length === 0) return good(result);
        const written = rewrite(rewritings);
        return written.ok ? good(result) : written;
      }),
    changeSettings: (decide) =>
      lock.hold(() => {
        const reading = settingsNow();
        if (!reading.ok) return reading;
        const { settings, beside, result } = decide(reading.value.settings);
        if (settings === null) return good(result);
        const contents = { ...storedSettings(settings, reading.value), ...beside };
        const stored = files.current(settingsFile);
        if (stored.ok && isDeepStrictEqual(stored.value.contents, contents)) return good(result);
        const written = rewrite([{ file: settingsFile, contents }]);
        return written.ok ? good(result) : written;
      }),
    moveToHistory: (pieces) =>
      lock.hold(() => {
        if (typeof pieces !== 'function') return moveToHistory({ ...files, rewrite }, pieces);
        const before = current();
        if (!before.ok) return before;
        return moveToHistory({ ...files, rewrite }, pieces(before.value));
      }),
    historyYears: () => historyYears(folder),
    readHistory: (year) => readHistory({ folder, form, clock }, year),
    fingerprint: () => fingerprintOnDisk(folder),
    watch(listener) {
      const stop = watchFolder(
        folder,
        () => fingerprintOnDisk(folder),
        () => ownFingerprint,
        listener,
      );
      stops.add(stop);
      return () => {
        stop();
        stops.delete(stop);
      };
    },
    notices: () => [...notices],
    close() {
      for (const stop of stops) stop();
      lock.close();
    },
  });
}

const readOnly = (folder: string) =>
  bad(
    'unwritable',
    folder,
    `Not opened for work: ${folder} can't be written.`,
    'Check whose the folder is, its rights, and whether its disk can only be read. Looking works all the same.',
  );
