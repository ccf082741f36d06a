import { identify, type Identity } from '../file/identity.ts';
import {
  filePath,
  liveFiles,
  settingsFile,
  type Contents,
  type ContentsName,
  type StoreFile,
} from '../folder/names.ts';
import { good, type Result } from '../result.ts';
import { readSettings, type SettingsReading } from '../settings/read-settings.ts';
import type { Loaded } from '../store.ts';

/** The live files as read, each with the identity it had then. */
export type Parts = {
  readonly [Name in keyof Contents]: {
    readonly contents: Contents[Name];
    readonly identity: Identity | null;
  };
};

/** The same not yet sorted by file. */
type AnyPart = {
  readonly contents: Contents[ContentsName];
  readonly identity: Identity | null;
};

/**
 * Reads the live files. Stops at the first problem, and at the first that is null: that needs more than this way of
 * reading can do.
 */
export function readParts<Failing extends null>(
  read: (file: StoreFile) => Result<AnyPart | Failing>,
): Result<Parts | Failing> {
  const parts: Partial<Record<ContentsName, AnyPart>> = {};
  for (const file of liveFiles) {
    const part = read(file);
    if (!part.ok) return part;
    if (part.value === null) return good(part.value);
    parts[file.holds] = part.value;
  }
  return good(parts as Parts);
}

export function assemble(
  folder: string,
  parts: Parts,
): { loaded: Loaded; settings: SettingsReading } {
  const settings = readSettings(parts.settings.contents, filePath(folder, settingsFile));
  const loaded: Loaded = {
    bench: parts.bench.contents,
    conditions: parts.conditions.contents,
    pings: parts.pings.contents,
    settings: settings.settings,
    fingerprint: fingerprintOf(liveFiles.map(({ name }) => parts[name as keyof Contents].identity)),
  };
  return { loaded, settings };
}

/** The fingerprint of the files as they are on the disk now. */
export const fingerprintOnDisk = (folder: string): string =>
  fingerprintOf(
    liveFiles.map((file) => {
      const identity = identify(filePath(folder, file));
      return identity.ok ? identity.value : identity.problem.kind;
    }),
  );

const fingerprintOf = (identities: readonly (Identity | null)[]): string =>
  identities.map((identity) => identity ?? 'none').join(' ');
