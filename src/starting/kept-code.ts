import { mkdirSync, readFileSync, renameSync, rmSync, statSync, writeFileSync } from 'node:fs';
import { dirname } from 'node:path';
import { crc32 } from 'node:zlib';

/** What V8 made of one file of the program. */
export type KeptPart = {
  /** CRC-32 of the file that it was made from. */
  readonly source: number;
  readonly code: Buffer;
};
export type KeptCode = ReadonlyMap<string, KeptPart>;

/** Another Node makes other code. V8 looks at its own version and flags itself. */
const maker = (): string => `${process.version} ${process.arch}`;
/** What a first start on an empty bench never called is missing in it, so it is made again now and then. */
const goesStaleAfter = 3_600_000;
const headBytes = 8;

/**
 * Reads what was kept. The file is the CRC-32 of all that follows, the length of a JSON header, the header, and the parts
 * one after another. V8 takes damaged code for good, hence the sum.
 *
 * @returns null where nothing is kept, or nothing that this Node can use
 */
export function readKeptCode(file: string): Map<string, KeptPart> | null {
  try {
    const bytes = readFileSync(file);
    if (bytes.readUInt32LE(0) !== crc32(bytes.subarray(4))) return null;
    let from = headBytes + bytes.readUInt32LE(4);
    const header = JSON.parse(bytes.toString('utf8', headBytes, from)) as Header;
    if (header.maker !== maker()) return null;
    return new Map(
      header.parts.map(([name, source, length]) => {
        const code = bytes.subarray(from, (from += length));
        return [name, { source, code }];
      }),
    );
  } catch {
    return null;
  }
}

type Header = {
  readonly maker: string;
  /** Name, sum of the source, length in bytes. */
  readonly parts: readonly (readonly [string, number, number])[];
};

/** Replaces what was kept, whole or not at all. It is only ever a gain in speed, so a failure is nobody's concern. */
export function writeKeptCode(file: string, kept: KeptCode): void {
  const parts = [...kept].map(([name, { source, code }]) => [name, source, code.length] as const);
  const header = Buffer.from(JSON.stringify({ maker: maker(), parts } satisfies Header));
  const head = Buffer.alloc(headBytes);
  head.writeUInt32LE(header.length, 4);
  const bytes = Buffer.concat([head, header, ...[...kept.values()].map(({ code }) => code)]);
  bytes.writeUInt32LE(crc32(bytes.subarray(4)), 0);
  const beside = `${file}.${process.pid}.new`;
  try {
    mkdirSync(dirname(file), { recursive: true, mode: 0o700 });
    try {
      writeFileSync(beside, bytes, { mode: 0o600 });
      renameSync(beside, file);
    } finally {
      rmSync(beside, { force: true });
    }
  } catch {
    // The next start compiles again.
  }
}

/** @param now on the clock that the disk's files are dated by */
export function isStale(file: string, now: number): boolean {
  try {
    return Math.abs(now - statSync(file).mtimeMs) > goesStaleAfter;
  } catch {
    return true;
  }
}
