import { lstatSync, type Stats } from 'node:fs';
import { bad, good, type Result } from '../result.ts';

/**
 * Tells one generation of a file from the next without reading it. Every write makes a new inode. Its number can come
 * again two writes later, when the first generation is let go; by then time and nearly always size differ.
 */
export type Identity = string;

/** Null if there is no such file. A link, folder or device in its place is refused. */
export function identify(path: string): Result<Identity | null> {
  let stats: Stats | undefined;
  try {
    stats = lstatSync(path, { throwIfNoEntry: false });
  } catch (error) {
    return unreadable(path, error);
  }
  if (stats === undefined) return good(null);
  if (stats.isSymbolicLink()) {
    return bad(
      'unsafe link',
      path,
      `Not opened: ${path} is a link to somewhere else.`,
      'Put the file itself there, or remove the link.',
    );
  }
  if (!stats.isFile()) {
    return bad(
      'unsafe link',
      path,
      `Not opened: ${path} is no plain file.`,
      'Move away what is there; recoat makes its own file.',
    );
  }
  return good(`${stats.dev}:${stats.ino}:${stats.mtimeMs}:${stats.size}`);
}

export const errorCode = (error: unknown): string =>
  error instanceof Error && 'code' in error ? String(error.code) : '';

export const unreadable = (path: string, error: unknown) =>
  bad(
    'unreadable',
    path,
    `Not read: ${path} can't be read (${errorCode(error) || String(error)}).`,
    'Check that the file and its folder are yours and readable.',
  );
