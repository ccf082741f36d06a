import { mkdirSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { dirname, join } from 'node:path';
import { describe, expect, it, onTestFinished } from 'vitest';
import { closingWords, readPortable } from '../../../src/shell/ping/portable.ts';

/** A root with these files; the forms are those of Linux's Documentation/ABI/testing/sysfs-class-power. */
function rootWith(files: Readonly<Record<string, string>>): string {
  const root = mkdtempSync(join(tmpdir(), 'recoat-root-'));
  onTestFinished(() => rmSync(root, { recursive: true }));
  for (const [path, text] of Object.entries(files)) {
    mkdirSync(join(root, dirname(path)), { recursive: true });
    writeFileSync(join(root, path), `${text}\n`);
  }
  return root;
}

const supply = 'sys/class/power_supply';
const mains = { [`${supply}/AC/type`]: 'Mains', [`${supply}/AC/online`]: '1' };
const battery = (status: string) => ({
  [`${supply}/BAT0/type`]: 'Battery',
  [`${supply}/BAT0/status`]: status,
});
const mouse = {
  [`${supply}/hid-mouse/type`]: 'Battery',
  [`${supply}/hid-mouse/scope`]: 'Device',
  [`${supply}/hid-mouse/status`]: 'Discharging',
};

describe('lid and battery', () => {
  it.each([
    ['a machine without either', {}, null],
    ['a machine on mains with the battery of a mouse', { ...mains, ...mouse }, null],
    [
      'a laptop that is plugged in',
      { ...mains, ...battery('Full') },
      'Lid: no pings if this closes.',
    ],
    [
      'a laptop on its battery',
      { ...mains, ...battery('Discharging') },
      'On battery: no pings if this closes or runs down.',
    ],
    [
      'a laptop without its battery',
      { ...mains, 'proc/acpi/button/lid/LID0/state': 'state:      open' },
      'Lid: no pings if this closes.',
    ],
    [
      'a lid that only the input devices know',
      { 'sys/class/input/input3/name': 'Lid Switch' },
      'Lid: no pings if this closes.',
    ],
  ])('of %s', (_, files, words) => {
    expect(closingWords(readPortable('linux', rootWith(files)))).toBe(words);
  });

  it('are not known of other systems, which is said', () => {
    expect(readPortable('darwin')).toBeNull();
    expect(closingWords(null)).toBe('With a lid: no pings if this closes.');
  });

  it('of a supply that tells nothing are taken for none', () => {
    expect(readPortable('linux', rootWith({ [`${supply}/BAT0/uevent`]: '' }))).toEqual({
      lid: false,
      battery: 'none',
    });
  });
});
