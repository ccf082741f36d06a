import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { keptFile } from '../../src/starting/kept-file.ts';

const home = join('/', 'home', 'ann');
const on = (platform: NodeJS.Platform, environment: NodeJS.ProcessEnv = {}) =>
  keptFile(['bench'], environment, platform, home);

describe('where compiled code is kept', () => {
  it('is one file for a command as text, one as JSON, and one for the screen', () => {
    const name = (...words: string[]) =>
      keptFile(words, {}, 'linux', home)?.slice(join(home, '.cache/recoat/compiled/').length);
    expect(name('bench')).toBe('bench');
    expect(name('bench', '--json')).toBe('bench-json');
    expect(name('note', '1', 'runner replaced')).toBe('note');
    expect(name()).toBe('screen');
    expect(name('--version')).toBe('screen');
  });

  it.each(['../../.profile', 'Bench', 'a'.repeat(21), 'knie\u0301', 'a b', ''])(
    'is one file for all such as %j, which is no command',
    (word) => {
      const file = keptFile([word, 'bench'], {}, 'linux', home);
      expect(file).toBe(join(home, '.cache', 'recoat', 'compiled', 'other'));
    },
  );

  it('is the system’s folder for what may go at any time', () => {
    expect(on('linux')).toBe(join(home, '.cache', 'recoat', 'compiled', 'bench'));
    expect(on('darwin')).toBe(join(home, 'Library', 'Caches', 'recoat', 'compiled', 'bench'));
    expect(on('win32')).toBe(join(home, 'AppData', 'Local', 'recoat', 'compiled', 'bench'));
    expect(on('win32', { LOCALAPPDATA: join('/', 'local') })).toBe(
      join('/', 'local', 'recoat', 'compiled', 'bench'),
    );
    expect(on('linux', { XDG_CACHE_HOME: join('/', 'cache') })).toBe(
      join('/', 'cache', 'recoat', 'compiled', 'bench'),
    );
  });

  it('passes over a relative XDG_CACHE_HOME, as the XDG base directories say', () => {
    expect(on('linux', { XDG_CACHE_HOME: 'cache' })).toBe(
      join(home, '.cache', 'recoat', 'compiled', 'bench'),
    );
  });

  it('is nowhere without a home', () => {
    expect(keptFile(['bench'], {}, 'linux', '')).toBeNull();
  });
});
