import { mkdir, writeFile } from 'node:fs/promises';
import { dirname } from 'node:path';
import { failure, type Failure } from './line/command.ts';

const ownerOnly = 0o600;
const ownerOnlyFolder = 0o700;

/** Writes a copy into the user's own folder, never over a file that is there. Null where it was written. */
export async function writeOwn(file: string, text: string): Promise<Failure | null> {
  try {
    await mkdir(dirname(file), { recursive: true, mode: ownerOnlyFolder });
    await writeFile(file, text, { flag: 'wx', mode: ownerOnly });
    return null;
  } catch (thrown) {
    const code = thrown instanceof Error && 'code' in thrown ? String(thrown.code) : String(thrown);
    return code === 'EEXIST'
      ? failure('refused', `Not copied: ${file} is there already. Move it away first.`)
      : failure(
          'store',
          `Not copied: ${file} can't be written (${code}). Check the folder and its rights.`,
        );
  }
}
