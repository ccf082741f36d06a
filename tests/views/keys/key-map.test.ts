import { describe, expect, it } from 'vitest';
import {
  actOf,
  helpLine,
  keyMapWith,
  keyOf,
  standardKeys,
} from '../../../src/views/keys/key-map.ts';
import { readPresses } from '../../../src/views/keys/press.ts';

describe('the key map', () => {
  it('gives no key to two acts', () => {
    const all = standardKeys.flatMap(({ keys }) => keys);
    expect(new Set(all).size).toBe(all.length);
  });

  it('leaves the digits and Escape to themselves', () => {
    const all = standardKeys.flatMap(({ keys }) => keys);
    for (const key of ['1', '2', '3', '4', '5', '6', '7', '8', '9', 'escape'])
      expect(all).not.toContain(key);
  });

  it('has on the numeric pad, by one press or two, everything that is done with gloves on', () => {
    const onPad = new Set(['enter', '+', '-', '*', '/', '0', '.']);
    const gloved = [
      'pick up',
      'next stamp',
      'ready',
      'not yet',
      'trouble',
      'first stroke',
      'next section',
      'done',
      'other stamp',
      'earlier',
      'later',
      'take back',
      'bring back',
      'back to',
    ];
    for (const act of gloved) {
      const binding = standardKeys.find((each) => each.act === act);
      const reached = binding?.listed !== undefined || binding?.keys.some((key) => onPad.has(key));
      expect(reached, act).toBe(true);
    }
  });

  it('moves an act to a key of the user, which then is lost to its old act', () => {
    const map = keyMapWith({ ready: ['w'] });
    expect(actOf(map, 'w')).toBe('ready');
    expect(actOf(map, 'r')).toBeNull();
    expect(keyOf(map, 'note')).toBe('');
  });

  it('names in the help line the very keys that are in force, as many as fit', () => {
    const map = keyMapWith({ trouble: ['w'] });
    expect(helpLine(map, ['ready', 'not yet', 'trouble'], 80)).toBe(
      'r ready  n not yet  w trouble',
    );
    expect(helpLine(map, ['ready', 'not yet', 'trouble'], 20)).toBe('r ready  n not yet');
  });
});

describe('reading presses', () => {
  it('takes the characters of one delivery apart', () => {
    expect(readPresses('jk\r', {}).map(({ name }) => name)).toEqual(['j', 'k', 'enter']);
  });

  it('is blind to case, and keeps what was typed', () => {
    expect(readPresses('D', { shift: true })).toEqual([{ name: 'd', text: 'D' }]);
  });

  it('hears nothing in keys with Ctrl or Alt', () => {
    expect(readPresses('d', { ctrl: true })).toEqual([]);
    expect(readPresses('d', { meta: true })).toEqual([]);
  });

  it.each([
    [{ return: true }, 'enter'],
    [{ backspace: true }, 'backspace'],
    [{ upArrow: true }, 'up'],
    [{ escape: true }, 'escape'],
    [{ tab: true }, 'tab'],
  ])('names %o', (key, name) => {
    expect(readPresses('', key)).toEqual([{ name, text: '' }]);
  });
});
