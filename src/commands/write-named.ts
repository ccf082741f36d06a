import { existsSync, readFileSync } from 'node:fs';
import { writeDurably } from '../persist/file/durable.ts';
import { failure, type Failure } from './line/command.ts';

/** A kind of file that the program may write over, told by what is in it. */
export type OwnKind = { readonly is: string; readonly has: (before: string) => boolean };

/** Writes a file that the user named, for its owner only, over nothing but an earlier one of its kind; null once it is on the disk. */
export function writeNamed(path: string, text: string, kind: OwnKind): Failure | null {
  try {
    if (existsSync(path) && !kind.has(readFileSync(path, 'utf8')))
      return failure(
        'refused',
        `Not written: ${path} is there already and is no ${kind.is}. Name another file.`,
      );
    writeDurably(path, text);
    return null;
  } catch (error) {
    const why = error instanceof Error ? error.message : String(error);
    return failure(
      'store',
      `Not written: ${path} (${why}). Name a file in a folder that you may write to.`,
    );
  }
}
