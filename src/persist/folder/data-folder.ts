import { posix, win32 } from 'node:path';

export type FolderChoice = {
  /** Given on the command line. */
  readonly option?: string | undefined;
  readonly env: Readonly<Record<string, string | undefined>>;
  readonly platform: NodeJS.Platform;
  readonly home: string;
  /** What a relative path counts from. */
  readonly from: string;
};

const ownName = 'recoat';

/**
 * The folder of the store: the option, else RECOAT_FOLDER, else where the platform keeps the data of programs:
 * XDG Base Directory Specification 0.8 (`$XDG_DATA_HOME`, which counts only if absolute, else `~/.local/share`),
 * `~/Library/Application Support` on macOS, `%LOCALAPPDATA%` on Windows.
 */
export function dataFolder({ option, env, platform, home, from }: FolderChoice): string {
  const path = platform === 'win32' ? win32 : posix;
  const chosen = option || env.RECOAT_FOLDER;
  if (chosen) return path.resolve(from, chosen);
  if (platform === 'darwin') return path.join(home, 'Library', 'Application Support', ownName);
  if (platform === 'win32') {
    return path.join(env.LOCALAPPDATA || path.join(home, 'AppData', 'Local'), ownName, 'Data');
  }
  const shared = env.XDG_DATA_HOME;
  const base = shared && path.isAbsolute(shared) ? shared : path.join(home, '.local', 'share');
  return path.join(base, ownName);
}
