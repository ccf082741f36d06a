import { appendFileSync, lstatSync, mkdirSync, renameSync, unlinkSync } from 'node:fs';
import { join } from 'node:path';
import { formatDiagnostic, type PingDiagnostic } from './diagnostic-line.ts';

export type Diagnostics = {
  /** Appends one line. A line that can't be written is counted and otherwise ignored: no ping waits for its record. */
  readonly record: (event: PingDiagnostic) => void;
  /** How many lines could not be written so far. */
  readonly missed: () => number;
};

export type DiagnosticsOptions = {
  /** The data folder. */
  readonly folder: string;
  /** Bytes from which on the file becomes the older one, in place of the one before. */
  readonly limit?: number;
};

export const diagnosticsFile = 'ping-diagnostics.log';
export const olderDiagnosticsFile = 'ping-diagnostics.older.log';

const ownerOnly = 0o600;
const ownerOnlyFolder = 0o700;

/** The plain text file that explains a ping that was missed. Lines of several processes may take turns in it. */
export function createDiagnostics({ folder, limit = 256 * 1024 }: DiagnosticsOptions): Diagnostics {
  const path = join(folder, diagnosticsFile);
  let missed = 0;
  let missedSinceWritten = 0;

  return {
    missed: () => missed,
    record: (event) => {
      try {
        const gap =
          missedSinceWritten > 0
            ? `${new Date(event.at).toISOString()} unwritten lines=${missedSinceWritten}\n`
            : '';
        makeRoom(folder, path, limit);
        // One append of whole lines, so that two processes never mix within a line.
        appendFileSync(path, `${gap}${formatDiagnostic(event)}\n`, { mode: ownerOnly });
        missedSinceWritten = 0;
      } catch {
        missed++;
        missedSinceWritten++;
      }
    },
  };
}

function makeRoom(folder: string, path: string, limit: number): void {
  const found = lstatSync(path, { throwIfNoEntry: false });
  // Nothing is appended to whatever a link leads to.
  if (found?.isSymbolicLink() === true) return unlinkSync(path);
  const size = found?.size;
  if (size === undefined) mkdirSync(folder, { recursive: true, mode: ownerOnlyFolder });
  else if (size >= limit) renameSync(path, join(folder, olderDiagnosticsFile));
}
