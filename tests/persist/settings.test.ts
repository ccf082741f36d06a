import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { standardSettings } from '../../src/tracker/settings/index.ts';
import { newFolder, openReader, openWriter, put, textOf, valueOf } from './places.ts';

const withSettings = (settings: unknown) => {
  const folder = newFolder();
  put(folder, 'settings.json', JSON.stringify({ recoat: 1, settings }));
  return { folder, file: join(folder, 'settings.json') };
};

const storedIn = (folder: string) => JSON.parse(textOf(folder, 'settings.json')).settings;

describe('settings from a file', () => {
  it('are taken where they fit; what is not there is standard', async () => {
    const { folder } = withSettings({
      temperature: 'F',
      zone: 'Europe/Lisbon',
      keys: { ready: ['w', 'y'] },
    });
    const opened = await openReader(folder);
    expect(opened.settings).toEqual({
      ...standardSettings,
      temperature: 'F',
      zone: 'Europe/Lisbon',
      keys: { ready: ['w', 'y'] },
    });
    expect(opened.notices).toEqual([]);
  });

  it.each([
    [
      { temperature: 'f' },
      '"temperature" is "f"; expected "auto", "C", "F".',
      'The standard is used. Nearest: F',
    ],
    [{ helper: 'yes' }, '"helper" is "yes"; expected false, true.', 'The standard is used.'],
    [{ farView: 3 }, '"farView" is 3; expected 1, 0, 2, 5, 10.', 'The standard is used.'],
    [{ bell: null }, '"bell" is null; expected "every", "loud", "never".', 'The standard is used.'],
    [
      { zone: 'Europe/Lissbon' },
      '"zone" is "Europe/Lissbon"; expected auto or a zone of the IANA list, such as Europe/Lisbon.',
      'The standard is used. Nearest: Europe/Lisbon',
    ],
    [
      { keys: { ready: 'w' } },
      '"keys" is {"ready":"w"}; expected lists of keys by the name of the act.',
      'The standard is used.',
    ],
    [
      { temprature: 'F' },
      '"temprature" is no setting.',
      'It was left there and not used. Nearest: temperature.',
    ],
    [{ constructor: 1 }, '"constructor" is no setting.', 'It was left there and not used.'],
  ])("are refused one by one where they don't: %j", async (wrong, says, todo) => {
    const { folder, file } = withSettings({ ...wrong, clock: '12' });
    const opened = await openReader(folder);
    expect(opened.settings).toEqual({ ...standardSettings, clock: '12' });
    expect(opened.notices).toHaveLength(1);
    expect(opened.notices[0]?.says).toBe(`${file}: ${says}`);
    expect(opened.notices[0]?.todo).toContain(todo);
  });

  it('that were refused stay in the file until they are set', async () => {
    const { folder } = withSettings({ temperature: 'K', later: { deep: 1 }, clock: '12' });
    const store = await openWriter(folder);
    expect(store.notices()).toHaveLength(2);
    const set = (change: object) =>
      valueOf(store.changeSettings((now) => ({ settings: { ...now, ...change }, result: null })));
    set({ bell: 'never' });
    expect(storedIn(folder)).toMatchObject({
      temperature: 'K',
      later: { deep: 1 },
      clock: '12',
      bell: 'never',
    });
    set({ temperature: 'C' });
    expect(storedIn(folder)).toMatchObject({ temperature: 'C', later: { deep: 1 } });
    expect((await openReader(folder)).settings.temperature).toBe('C');
  });

  it('that are no record are damage', async () => {
    const { folder } = withSettings(['F']);
    const opened = await openReader(folder);
    expect(opened.settings).toEqual(standardSettings);
    expect(opened.notices[0]?.says).toContain('"settings" is missing or no object');
    expect(opened.notices[0]?.says).toContain('standard settings are used');
  });
});

it('are read anew when another process changed them', async () => {
  const folder = newFolder();
  const [one, other] = [await openWriter(folder), await openWriter(folder)];
  valueOf(one.changeSettings((now) => ({ settings: { ...now, bell: 'never' }, result: null })));
  valueOf(other.changeSettings((now) => ({ settings: { ...now, clock: '24' }, result: null })));
  expect(valueOf(one.load()).settings).toEqual({ ...standardSettings, bell: 'never', clock: '24' });
});
