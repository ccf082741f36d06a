import { existsSync, readFileSync } from 'node:fs';
import { join } from 'node:path';

/** The offset that holds from an instant on, and the one before it. */
export type Transition = { readonly at: number; readonly before: number; readonly after: number };

const folder = '/usr/share/zoneinfo';

/**
 * The transitions of a zone as this machine's copy of the IANA database has them: TZif files of RFC 9636, second block
 * (64-bit times). Null where the machine has no such file.
 */
export function readTransitions(zone: string): readonly Transition[] | null {
  const path = join(folder, zone);
  if (!existsSync(path)) return null;
  const file = readFileSync(path);
  if (file.toString('latin1', 0, 4) !== 'TZif' || file.toString('latin1', 4, 5) < '2') return null;
  const first = counts(file, 0);
  const start = headerLength + blockLength(first, 4);
  const block = counts(file, start);
  const times = start + headerLength;
  const kinds = times + block.times * 8;
  const offsets = kinds + block.times;
  const offsetOf = (kind: number): number => file.readInt32BE(offsets + kind * 6) * 1000;
  return Array.from({ length: block.times }, (_, index) => ({
    at: Number(file.readBigInt64BE(times + index * 8)) * 1000,
    before: offsetOf(index === 0 ? 0 : file.readUInt8(kinds + index - 1)),
    after: offsetOf(file.readUInt8(kinds + index)),
  }));
}

const headerLength = 44;

type Counts = {
  utc: number;
  standard: number;
  leaps: number;
  times: number;
  types: number;
  characters: number;
};

function counts(file: Buffer, start: number): Counts {
  const [utc = 0, standard = 0, leaps = 0, times = 0, types = 0, characters = 0] = [
    0, 1, 2, 3, 4, 5,
  ].map((index) => file.readUInt32BE(start + 20 + index * 4));
  return { utc, standard, leaps, times, types, characters };
}

const blockLength = (block: Counts, timeSize: number): number =>
  block.times * timeSize +
  block.times +
  block.types * 6 +
  block.characters +
  block.leaps * (timeSize + 4) +
  block.standard +
  block.utc;
