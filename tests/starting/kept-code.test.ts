import { mkdtempSync, readFileSync, readdirSync, rmSync, utimesSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { isStale, readKeptCode, writeKeptCode } from '../../src/starting/kept-code.ts';

let folder: string;
let file: string;
const parts = new Map([
  ['main.cjs', { source: 4_000_000_000, code: Buffer.from([1, 2, 3]) }],
  ['chunk-é.cjs', { source: 0, code: Buffer.alloc(300, 7) }],
]);

beforeEach(() => {
  folder = mkdtempSync(join(tmpdir(), 'recoat-kept-'));
  file = join(folder, 'compiled', 'bench');
});
afterEach(() => rmSync(folder, { recursive: true, force: true }));

describe('kept code', () => {
  it('is read as it was written, and leaves nothing else behind', () => {
    writeKeptCode(file, parts);
    expect(readKeptCode(file)).toEqual(parts);
    expect(readdirSync(join(folder, 'compiled'))).toEqual(['bench']);
  });

  it('is nothing where there is no file', () => {
    expect(readKeptCode(file)).toBeNull();
  });

  it('counts for nothing with any byte changed or the end cut off', () => {
    writeKeptCode(file, parts);
    const whole = readFileSync(file);
    for (let at = 0; at < whole.length; at++) {
      const damaged = Buffer.from(whole);
      damaged[at] = (damaged[at] ?? 0) ^ 16;
      writeFileSync(file, damaged);
      expect(readKeptCode(file), `byte ${at}`).toBeNull();
      writeFileSync(file, whole.subarray(0, at));
      expect(readKeptCode(file), `cut at ${at}`).toBeNull();
    }
  });

  it('of another Node counts for nothing', () => {
    const version = process.version;
    Object.defineProperty(process, 'version', { value: 'v22.13.0', configurable: true });
    try {
      writeKeptCode(file, parts);
    } finally {
      Object.defineProperty(process, 'version', { value: version, configurable: true });
    }
    expect(readKeptCode(file)).toBeNull();
  });

  it('that has no place is nobody’s concern', () => {
    writeFileSync(join(folder, 'compiled'), 'a file where the folder would be');
    expect(() => writeKeptCode(file, parts)).not.toThrow();
    expect(readKeptCode(file)).toBeNull();
  });

  it('is made again after an hour, where it is missing, and where its date lies ahead', () => {
    expect(isStale(file, 0)).toBe(true);
    writeKeptCode(file, parts);
    utimesSync(file, 1_000_000, 1_000_000);
    const written = 1_000_000_000;
    expect(isStale(file, written + 3_600_000)).toBe(false);
    expect(isStale(file, written + 3_600_001)).toBe(true);
    expect(isStale(file, written - 3_600_001)).toBe(true);
  });
});
