import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { dataFolder, looksSynced } from '../../src/persist/index.ts';

describe('the data folder', () => {
  const linux = { env: {}, platform: 'linux', home: '/home/kim', from: '/shop' } as const;
  const windows = { env: {}, platform: 'win32', home: 'C:\\Users\\kim', from: 'C:\\work' } as const;

  it('is what the option says, else what the environment says', () => {
    const env = { RECOAT_FOLDER: '/data/shop', XDG_DATA_HOME: '/xdg' };
    expect(dataFolder({ ...linux, env, option: '/mine' })).toBe('/mine');
    expect(dataFolder({ ...linux, env })).toBe('/data/shop');
  });

  it('counts a relative one from where the program was started', () => {
    expect(dataFolder({ ...linux, option: 'bench' })).toBe('/shop/bench');
    expect(dataFolder({ ...linux, env: { RECOAT_FOLDER: '../bench' } })).toBe('/bench');
    expect(dataFolder({ ...windows, option: 'bench' })).toBe('C:\\work\\bench');
  });

  it('takes an empty option or variable for none', () => {
    expect(
      dataFolder({ ...linux, option: '', env: { RECOAT_FOLDER: '', XDG_DATA_HOME: '' } }),
    ).toBe('/home/kim/.local/share/recoat');
  });

  // XDG Base Directory Specification 0.8: "$XDG_DATA_HOME ... If ... not set or empty, a default equal to
  // $HOME/.local/share should be used"; "All paths ... must be absolute. If an implementation encounters a relative
  // path ... it should consider the path invalid and ignore it."
  it('follows the XDG Base Directory Specification', () => {
    expect(dataFolder(linux)).toBe('/home/kim/.local/share/recoat');
    expect(dataFolder({ ...linux, env: { XDG_DATA_HOME: '/xdg' } })).toBe('/xdg/recoat');
    expect(dataFolder({ ...linux, env: { XDG_DATA_HOME: 'xdg' } })).toBe(
      '/home/kim/.local/share/recoat',
    );
    expect(dataFolder({ ...linux, platform: 'freebsd' })).toBe('/home/kim/.local/share/recoat');
  });

  it('lies where macOS and Windows keep the data of programs', () => {
    expect(dataFolder({ ...linux, platform: 'darwin', home: '/Users/kim' })).toBe(
      '/Users/kim/Library/Application Support/recoat',
    );
    expect(dataFolder(windows)).toBe('C:\\Users\\kim\\AppData\\Local\\recoat\\Data');
    expect(dataFolder({ ...windows, env: { LOCALAPPDATA: 'D:\\Local' } })).toBe(
      'D:\\Local\\recoat\\Data',
    );
  });
});

describe('a folder that looks synced', () => {
  const nothing = () => false;

  it.each([
    '/home/kim/Dropbox/shop',
    '/home/kim/Dropbox (Personal)/shop',
    'C:\\Users\\kim\\OneDrive\\shop',
    'C:\\Users\\kim\\OneDrive - Shop\\recoat',
    '/Users/kim/Library/CloudStorage/GoogleDrive-kim@example.org/My Drive/recoat',
    '/Users/kim/Library/Mobile Documents/com~apple~CloudDocs/recoat',
    '/home/kim/Nextcloud',
    '/home/kim/Google Drive/recoat',
  ])('is known by a name above it: %s', (folder) => {
    expect(looksSynced(folder, nothing)).toBe(true);
  });

  it.each([
    '/home/kim/.local/share/recoat',
    '/Users/kim/Library/Application Support/recoat',
    'C:\\Users\\kim\\AppData\\Local\\recoat\\Data',
    '/home/kim/dropbox-notes/recoat',
    '/home/kim/boxes/megaphone/synced',
  ])('is not seen where there is none: %s', (folder) => {
    expect(looksSynced(folder, nothing)).toBe(false);
  });

  it('is known by what such a program leaves in it or above it', () => {
    const mark = join('/home/kim/shop', '.stfolder');
    expect(looksSynced('/home/kim/shop/recoat', (path) => path === mark)).toBe(true);
    expect(looksSynced('/home/kim/other/recoat', (path) => path === mark)).toBe(false);
  });
});
