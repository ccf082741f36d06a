import { closeSync, openSync, readSync } from 'node:fs';

/** Makes the id of one key press; all its facts are named after it. */
export type NewId = () => string;

/** Short, and never the same on two machines: eight random bytes. */
export const newId: NewId = () => randomBytes(8).toString('hex');

/**
 * Where the system hands out random bytes by a file they come from there: loading Node's cryptography for the same bytes
 * costs a command that writes a tenth of an empty Node start.
 */
function randomBytes(count: number): Buffer {
  const bytes = Buffer.alloc(count);
  try {
    const source = openSync('/dev/urandom', 'r');
    try {
      if (readSync(source, bytes) === count) return bytes;
    } finally {
      closeSync(source);
    }
  } catch {
    // Windows has no such file.
  }
  return process.getBuiltinModule('node:crypto').randomBytes(count);
}
