import { describe, expect, it } from 'vitest';
import { standardKeys } from '../../../src/views/keys/key-map.ts';
import { keysScreen } from '../../../src/views/keys-sheet/index.ts';
import type { KeysState } from '../../../src/views/screens.ts';
import {
  afternoon,
  at,
  key,
  portOf,
  rowsOf,
  sizes,
  snapshotOf,
  viewOf,
  withSettings,
  type Size,
} from '../support/bench-of.ts';

const snapshot = snapshotOf(afternoon().bench());
const open: KeysState = { is: 'keys' };

const viewAt = (size: Size, keys: Readonly<Record<string, readonly string[]>> = {}) =>
  viewOf({ ...snapshot, settings: withSettings({ keys }) }, at('24 14:29'), size);

const sheet = (size: Size, state: KeysState = open, keys = {}): readonly string[] =>
  rowsOf(keysScreen.draw(state, viewAt(size, keys)));

const press = (name: string, state: KeysState, size: Size) => {
  const view = viewAt(size);
  return keysScreen.press(
    state,
    key(name),
    view,
    portOf(() => snapshot),
  );
};

/** Every row that comes into sight while paging down. */
function everyPage(size: Size): string {
  const seen: string[] = [];
  let state: KeysState = open;
  for (let page = 0; page < 20; page++) {
    const rows = sheet(size, state);
    seen.push(...rows);
    if (!rows.some((row) => row.startsWith('down:'))) return seen.join('\n');
    state = press('page down', state, size).state ?? state;
  }
  throw new Error('paging down has no end');
}

describe('the keys sheet', () => {
  it.each(sizes)('fits %i x %i', (columns, rows) => {
    const drawn = sheet([columns, rows]);
    expect(drawn).toHaveLength(rows);
    for (const row of drawn) expect(row.length).toBeLessThanOrEqual(columns);
  });

  it('shows all of it in 24 rows of 80 columns', () => {
    const text = sheet([80, 24]).join('\n');
    expect(text).not.toMatch(/^down: /m);
    expect(text).toContain('Enter           pick up, put down      o           odd timer');
    expect(text).toContain('/ 1 first stroke on  / 2 next section     / 3 done');
    expect(text).toContain('A leaning glove counts as none.');
    expect(text).toContain('Any key silences a loud ping and selects its piece');
  });

  it.each(sizes)('names every key of the map at %i x %i', (columns, rows) => {
    const text = everyPage([columns, rows]);
    for (const { act, keys, says } of standardKeys) {
      if (['up', 'down', 'list', 'all keys'].includes(act)) continue;
      expect(text).toContain(says.split(/[,:]/)[0]?.slice(0, 7));
      for (const name of keys.filter((each) => each.length === 1))
        expect(text).toMatch(new RegExp(`(^|\\s)[${name === '-' ? '\\-' : name}](\\s|$)`, 'm'));
    }
  });

  it("shows a person's own keys in place of those that came", () => {
    const text = sheet([80, 24], open, { ready: ['l'], 'all keys': ['?'] }).join('\n');
    expect(text).toMatch(/^l +ready/m);
    expect(text).not.toContain('r or *');
    expect(text).toContain('Esc or ?: back');
  });

  it('says so where an act has lost its keys', () => {
    expect(sheet([80, 24], open, { ready: ['t'] }).join('\n')).toMatch(/^\(no key\) +trouble/m);
  });

  it('draws in ASCII where the terminal has nothing else', () => {
    const view = { ...viewAt([32, 24]), theme: { colour: 'bare', glyphs: 'ascii' } as const };
    const text = rowsOf(keysScreen.draw(open, view)).join('\n');
    expect(text).toMatch(/^[\x20-\x7e\n]*$/);
    expect(text).toContain('~');
  });
});

describe('keys on the keys sheet', () => {
  const small: Size = [40, 20];

  it('scrolls no further than its ends', () => {
    expect(press('up', open, small).state).toEqual({ is: 'keys', from: 0 });
    const last = press('end', open, small).state ?? open;
    expect(press('down', last, small).state).toEqual(last);
    expect(sheet(small, last).at(-2)).toMatch(/^up: \d+ more$/);
    expect(press('home', last, small).state).toEqual({ is: 'keys', from: 0 });
  });

  it.each(['escape', 'k', 'enter'])('goes back on %s', (name) => {
    expect(press(name, open, small)).toEqual({ back: true });
  });

  it('does nothing on any other key', () => {
    expect(press('d', open, small)).toEqual({ state: open });
  });
});
