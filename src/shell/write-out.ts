import { writeSync } from 'node:fs';

/**
 * Writes to an open file at once. Streams on standard output cost a quick command a tenth of its time, so one is made
 * only where the other end takes nothing more for now.
 *
 * @param stream makes the stream of the same file
 */
export function writeOut(
  file: number,
  text: string,
  stream: () => { readonly write: (rest: Uint8Array) => unknown },
): void {
  let rest: Uint8Array = Buffer.from(text.endsWith('\n') ? text : `${text}\n`);
  try {
    while (rest.length > 0) rest = rest.subarray(writeSync(file, rest));
  } catch (thrown) {
    const code = thrown instanceof Error && 'code' in thrown ? thrown.code : null;
    if (code === 'EAGAIN') stream().write(rest);
    // Whoever read has gone, as `head` does; there is nobody to tell.
    else if (code !== 'EPIPE') throw thrown;
  }
}
