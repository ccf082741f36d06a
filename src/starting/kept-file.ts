import { homedir } from 'node:os';
import { isAbsolute, join } from 'node:path';

/**
 * Where the compiled code for these words is kept: each command calls other functions, as text and as JSON.
 *
 * @param words of the command line
 * @returns null where this user has no folder of their own
 */
export function keptFile(
  words: readonly string[],
  { XDG_CACHE_HOME = '', LOCALAPPDATA }: NodeJS.ProcessEnv,
  platform: NodeJS.Platform,
  home = homedir(),
): string | null {
  const first = words.find((word) => !word.startsWith('-')) ?? 'screen';
  // What stands before a command may hold anything.
  const command = /^[a-z-]{1,20}$/.test(first) ? first : 'other';
  const name = words.includes('--json') ? `${command}-json` : command;
  const caches = isAbsolute(XDG_CACHE_HOME)
    ? XDG_CACHE_HOME
    : home === ''
      ? null
      : platform === 'win32'
        ? LOCALAPPDATA || join(home, 'AppData', 'Local')
        : platform === 'darwin'
          ? join(home, 'Library', 'Caches')
          : join(home, '.cache');
  return caches === null ? null : join(caches, 'recoat', 'compiled', name);
}
