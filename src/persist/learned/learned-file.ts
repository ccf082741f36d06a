import {
  closeSync,
  fstatSync,
  openSync,
  readFileSync,
  readSync,
  renameSync,
  rmSync,
  writeFileSync,
} from 'node:fs';
import { join } from 'node:path';
import { crc32 } from 'node:zlib';
import type { DriedCoat, Taught } from '../../tracker/learning/index.ts';
import { partEnding } from '../file/durable.ts';
import { filePath, historyFile } from '../folder/names.ts';
import { historyYears } from '../reading/history-years.ts';

/** One year of history: its file's length and the end of it, where its own sum stands. */
export type YearPrint = { readonly year: number; readonly print: string };

/** What a number of years taught: minutes, and the coats that were tried in them. */
export type YearsTaught = Taught & { readonly dried: readonly DriedCoat[] };

/**
 * What the history taught: a throw-away cache, so that ten years needn't be read again to expect one step's minutes. It names
 * the history that it was made from; where that is another, or a byte of the cache is, it is made again.
 */
export type LearnedFile = {
  readonly years: readonly YearPrint[];
  /** Pieces of that history that were not to teach. */
  readonly except: readonly string[];
  /** All years but the last, and all: when a piece leaves, only the last year need be read again. */
  readonly earlier: YearsTaught;
  readonly whole: YearsTaught;
  /** Hours from elsewhere, by their ids, and all years taught on top of them: they are older. */
  readonly imports: readonly string[];
  readonly onImports: Taught;
};

/** Counts up when the model changes: what an earlier one learned can't be gone on with. */
const model = 4;

const learnedPath = (folder: string): string => join(folder, 'learned.json');

/** The history as it lies in the folder now. */
export const historyPrints = (folder: string): readonly YearPrint[] =>
  historyYears(folder).map((year) => ({
    year,
    print: printOf(filePath(folder, historyFile(year))),
  }));

const tailLength = 24;

function printOf(path: string): string {
  let opened: number | null = null;
  try {
    opened = openSync(path, 'r');
    const { size } = fstatSync(opened);
    const tail = Buffer.alloc(Math.min(tailLength, size));
    readSync(opened, tail, 0, tail.length, size - tail.length);
    return `${size}:${tail.toString('hex')}`;
  } catch {
    return 'unread';
  } finally {
    if (opened !== null) closeSync(opened);
  }
}

/** The first line; what only learning anew needs is in the second. */
type FirstLine = Omit<LearnedFile, 'earlier' | 'onImports'> & {
  /** Null where nothing is from elsewhere: then it is what all years taught. */
  readonly onImports: Taught | null;
};

/** Null where there is none, or not one that this program wrote. Many commands read it: only what they ask for is parsed. */
export function readLearned(folder: string): LearnedFile | null {
  try {
    const [head, first = '', second = ''] = readFileSync(learnedPath(folder), 'utf8').split('\n');
    if (head !== headOf(first, second)) return null;
    const line = JSON.parse(first) as FirstLine;
    return {
      ...line,
      onImports: line.onImports ?? line.whole,
      get earlier() {
        return JSON.parse(second) as YearsTaught;
      },
    };
  } catch {
    return null;
  }
}

/** Where it can't be written nothing is lost: it is made again at the next start. */
export function writeLearned(folder: string, { earlier, onImports, ...rest }: LearnedFile): void {
  const line: FirstLine = { ...rest, onImports: onImports === rest.whole ? null : onImports };
  const [first, second] = [JSON.stringify(line), JSON.stringify(earlier)];
  const part = `${learnedPath(folder)}${partEnding}`;
  try {
    // Left by a process that died, or a link to somewhere else: it is not written into.
    rmSync(part, { force: true });
    writeFileSync(part, `${headOf(first, second)}\n${first}\n${second}`, {
      mode: 0o600,
      flag: 'wx',
    });
    renameSync(part, learnedPath(folder));
  } catch {
    // A full or read-only disk; whatever is recorded there says so itself.
  }
}

const headOf = (first: string, second: string): string =>
  `recoat learned ${model} ${crc32(second, crc32(first)).toString(16)}`;
