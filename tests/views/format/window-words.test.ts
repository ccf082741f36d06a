import { describe, expect, it, test } from 'vitest';
import {
  callWords,
  stateCells,
  thenWords,
  windowWords,
  type ShopClock,
} from '../../../src/views/format/index.ts';
import type { Edge, Window } from '../../../src/tracker/windows/index.ts';
import { windowOf } from './invented-windows.ts';

const shop: ShopClock = { zone: 'UTC', hours: '24' };

/** A row as the bench shows it: words, clock, left; then how it is called, and what comes after. */
const rowOf = (window: Window, now: string): string => {
  const { words, clock, left } = windowWords(window, Date.parse(now), shop);
  return [words, clock, left].join(' ');
};
const callOf = (window: Window, now: string): string => callWords(window, Date.parse(now), shop);
const thenOf = (window: Window, now: string): string => thenWords(window, Date.parse(now), shop);
const roleOf = (window: Window, now: string): string =>
  windowWords(window, Date.parse(now), shop).role;

const varnish = windowOf('coat', 'recoat', [
  ['2026-11-23T18:00Z', 'wait'],
  ['2026-11-24T10:40Z', 'go'],
  ['2026-11-24T18:30Z', 'go after work', 'costs work', 'scuff 320 first'],
]);

const clearCoat = windowOf('coat', 'scuff', [
  ['2026-11-24T11:22Z', 'wait'],
  ['2026-11-24T15:10Z', 'go'],
  ['2026-11-24T23:00Z', 'go after work', 'costs work', 'scuff 320 first'],
]);

const glueUp = windowOf('glue', 'clamps off', [
  ['2026-11-24T14:20Z', 'wait'],
  ['2026-11-24T15:20Z', 'go'],
]);

const aerosol = windowOf(
  'coat',
  'pass',
  [
    ['2026-12-03T15:49Z', 'wait'],
    ['2026-12-03T15:59Z', 'go'],
    ['2026-12-03T16:49Z', 'keep off', 'costs work', 'recoating now wrinkles it'],
    ['2026-12-05T06:19Z', 'go'],
  ],
  { closedBy: { by: 'next pass' }, pass: 3 },
);

const bleach = windowOf('chemical', 'B on', [
  ['2026-12-03T16:30Z', 'wait'],
  ['2026-12-03T16:40Z', 'go'],
  ['2026-12-03T16:42Z', 'late', 'spoils', 'rinse, dry, start over'],
]);

const stain = windowOf('chemical', 'wipe off', [
  ['2026-12-03T16:30Z', 'wait'],
  ['2026-12-03T16:35Z', 'go'],
  ['2026-12-03T16:45Z', 'late', 'spoils', 'wet it with more stain, wipe at once'],
]);

const openGlue = windowOf('glue', 'in clamps', [
  ['2026-12-03T16:30Z', 'go'],
  ['2026-12-03T16:35Z', 'late', 'spoils', 'skinned over: wipe off, glue again'],
]);

describe('rows of the bench', () => {
  test.each<[string, Window, string, string]>([
    ['a varnish that can be tried', varnish, '2026-11-24T14:29Z', 'try it till 18:30 4 h 01'],
    ['a coat that dries', clearCoat, '2026-11-24T14:29Z', 'drying, try it 15:10 41 min'],
    ['a glue-up', glueUp, '2026-11-24T14:29Z', 'in clamps till 15:20 51 min'],
    ['clamps that can come off', glueUp, '2026-11-24T15:41:20Z', 'clamps off since 15:20 21 min'],
    ['glue that wants its clamps', openGlue, '2026-12-03T16:31Z', 'in clamps by 16:35 4:00'],
    ['a forbidden gap', aerosol, '2026-12-04T14:29Z', 'keep off till 06:19 Sat'],
    ['the next pass of a coat', aerosol, '2026-12-03T16:41:20Z', 'pass 4 till 16:49 7:40'],
    ['the flash-off before it', aerosol, '2026-12-03T15:50Z', 'drying, pass 4 15:59 9:00'],
    ['a bleach at work', bleach, '2026-12-03T16:33Z', 'working, B on 16:40 7:00'],
    ['a bleach that wants its B', bleach, '2026-12-03T16:41:20Z', 'B now, till 16:42 0:40'],
    ['a bleach that went dry', bleach, '2026-12-03T16:45Z', 'late since 16:42 3 min'],
    ['a stain at work', stain, '2026-12-03T16:33Z', 'working, wipe 16:35 2:00'],
    ['a stain to wipe', stain, '2026-12-03T16:41:20Z', 'wipe now, till 16:45 3:40'],
    ['a closed recoat', varnish, '2026-11-24T18:51Z', 'scuff since 18:30 21 min'],
  ])('%s', (_, window, now, row) => {
    expect(rowOf(window, now)).toBe(row);
  });

  it('say when it began where the end hangs on a stamp still to come', () => {
    const unknown = windowOf('coat', 'recoat', [['2026-11-24T14:00Z', 'wait']]);
    expect(rowOf(unknown, '2026-11-24T14:29Z')).toBe('drying since 14:00 29 min');
  });

  it('tell the next opening, not one that is over', () => {
    const twice = windowOf('coat', 'recoat', [
      ['2026-11-24T14:00Z', 'wait'],
      ['2026-11-24T14:10Z', 'go'],
      ['2026-11-24T14:20Z', 'wait'],
      ['2026-11-24T15:00Z', 'go'],
    ]);
    expect(rowOf(twice, '2026-11-24T14:29Z')).toBe('drying, try it 15:00 31 min');
    expect(callOf(twice, '2026-11-24T14:29Z')).toBe('try it from 15:00');
  });

  it('say nothing of a window that is over', () => {
    const over = windowOf('chemical', 'B on', [['2026-12-03T16:30Z', 'wait']], {
      closedAt: '2026-12-03T16:41Z',
    });
    expect(windowWords(over, Date.parse('2026-12-03T16:42Z'), shop)).toMatchObject({
      words: '',
      at: null,
      left: '',
      state: 'done',
    });
    expect(callOf(over, '2026-12-03T16:42Z')).toBe('');
    expect(thenOf(over, '2026-12-03T16:42Z')).toBe('');
  });
});

describe('other kinds', () => {
  const cure = windowOf('cure', 'light use', [
    ['2026-11-24T09:00Z', 'wait'],
    ['2026-12-14T09:00Z', 'go'],
  ]);
  const pot = windowOf('pot', 'wash out', [
    ['2026-11-24T14:00Z', 'wait'],
    ['2026-11-24T14:15Z', 'go'],
    ['2026-11-24T18:00Z', 'late', 'spoils', 'gelled: into the metal bin, outdoors'],
  ]);
  const timer = windowOf('timer', 'turn the boards', [
    ['2026-11-24T14:00Z', 'wait'],
    ['2026-11-24T14:45Z', 'go'],
  ]);

  test.each<[Window, string, string]>([
    [cure, '2026-11-24T14:29Z', 'curing till 09:00 14 Dec'],
    [cure, '2026-12-14T09:30Z', 'light use since 09:00 30 min'],
    [pot, '2026-11-24T14:05Z', 'pot stands till 14:15 10 min'],
    [pot, '2026-11-24T14:29Z', 'pot lasts till 18:00 3 h 31'],
    [pot, '2026-11-24T18:29Z', 'pot over since 18:00 29 min'],
    [timer, '2026-11-24T14:29Z', 'timer till 14:45 16 min'],
    [timer, '2026-11-24T14:50Z', 'timer up since 14:45 5 min'],
  ])('%#', (window, now, row) => {
    expect(rowOf(window, now)).toBe(row);
  });

  it('never take more than their cells, whatever the verb', () => {
    const kinds = ['chemical', 'coat', 'glue', 'cure', 'pot', 'timer'] as const;
    const verbs = [
      'B on',
      'wipe off',
      'neutralise',
      'test scrape of the whole top',
      'clamps off',
      'rub out',
    ];
    for (const kind of kinds) {
      for (const verb of verbs) {
        const window = windowOf(kind, verb, [
          ['2026-12-03T16:00Z', 'wait'],
          ['2026-12-03T16:10Z', 'go'],
          [
            '2026-12-03T16:20Z',
            'go after work',
            'costs work',
            `${verb} again with everything it takes`,
          ],
          ['2026-12-03T16:30Z', 'keep off', 'costs work'],
          ['2026-12-03T16:40Z', 'late', 'spoils'],
        ]);
        for (const minute of ['05', '15', '25', '35', '45']) {
          const { words } = windowWords(window, Date.parse(`2026-12-03T16:${minute}Z`), shop);
          expect(words).not.toBe('');
          expect(words.length, `${kind}, ${verb}: "${words}"`).toBeLessThanOrEqual(stateCells);
          expect(words).not.toMatch(/\bready\b|\bsafe\b/);
        }
      }
    }
  });
});

describe('calls after number and name', () => {
  test.each<[Window, string, string]>([
    [varnish, '2026-11-24T14:29Z', 'try it, till 18:30'],
    [clearCoat, '2026-11-24T14:29Z', 'try it from 15:10'],
    [glueUp, '2026-11-24T14:29Z', 'clamps off from 15:20'],
    [glueUp, '2026-11-24T15:30Z', 'clamps off since 15:20'],
    [bleach, '2026-12-03T16:41:20Z', 'B on, by 16:42'],
    [bleach, '2026-12-03T16:45Z', 'late: rinse, dry, start over'],
    [aerosol, '2026-12-03T16:41:20Z', 'pass 4: first stroke by 16:49'],
    [aerosol, '2026-12-03T17:00Z', 'keep off till Sat 06:19'],
    [varnish, '2026-11-24T18:51Z', 'scuff 320 first, closed 18:30'],
  ])('%#', (window, now, call) => {
    expect(callOf(window, now)).toBe(call);
  });
});

describe('what comes after', () => {
  test.each<[Window, string, string]>([
    [varnish, '2026-11-24T14:29Z', 'after 18:30 scuff 320 first'],
    [varnish, '2026-11-24T18:51Z', 'scuff 320 first'],
    [clearCoat, '2026-11-24T14:29Z', 'open to 23:00'],
    [glueUp, '2026-11-24T14:29Z', 'nothing lost after'],
    [glueUp, '2026-11-24T15:41Z', 'nothing lost by waiting'],
    [aerosol, '2026-12-03T16:41:20Z', 'then keep off till Sat 06:19'],
    [aerosol, '2026-12-03T17:00Z', 'recoating now wrinkles it'],
    [bleach, '2026-12-03T16:41:20Z', 'late: rinse, dry, start over'],
  ])('%#', (window, now, then) => {
    expect(thenOf(window, now)).toBe(then);
  });

  it('says that a cold damp shop leaves no open time', () => {
    const cold = windowOf('coat', 'recoat', [
      ['2026-11-24T14:00Z', 'wait'],
      ['2026-11-25T02:00Z', 'go after work', 'costs work', 'scuff 320 first'],
    ]);
    expect(thenOf(cold, '2026-11-24T14:29Z')).toBe(
      'no open time: warm the shop; from Wed 02:00 scuff 320 first',
    );
    expect(thenOf({ ...cold, heldBackAt: cold.begunAt }, '2026-11-24T14:29Z')).toBe(
      'no open time left; from Wed 02:00 scuff 320 first',
    );
    const gap = windowOf('coat', 'recoat', [
      ['2026-11-24T14:00Z', 'wait'],
      ['2026-11-24T15:00Z', 'keep off', 'costs work', 'recoating now wrinkles it'],
      ['2026-11-26T14:00Z', 'go'],
    ]);
    const edge = (time: string): Edge => ({
      kind: 'clock',
      after: { events: ['first-stroke'], which: 'first' },
      time,
    });
    const at = gap.stretches.map((stretch, index) => ({ ...stretch, from: edge(`15:0${index}`) }));
    const going = { meaning: 'go', loss: 'costs nothing', from: edge('14:30') } as const;
    const withGo: Window = {
      ...gap,
      stretches: at,
      rule: { ...gap.rule, stretches: [...at.slice(0, 1), going, ...at.slice(1)] },
    };
    expect(thenOf(gap, '2026-11-24T14:29Z')).toBe('then keep off till Thu 14:00');
    expect(thenOf(withGo, '2026-11-24T14:29Z')).toBe(
      'no open time: warm the shop; then keep off till Thu 14:00',
    );
  });

  it('does not promise that nothing is lost while a closing is not known yet', () => {
    const window = windowOf('coat', 'recoat', [
      ['2026-11-24T14:00Z', 'wait'],
      ['2026-11-24T16:00Z', 'go'],
    ]);
    const unknownClosing: Window = {
      ...window,
      rule: {
        ...window.rule,
        stretches: [...window.rule.stretches, { meaning: 'go after work', loss: 'costs work' }],
      },
    };
    expect(thenOf(window, '2026-11-24T14:29Z')).toBe('nothing lost after');
    expect(thenOf(unknownClosing, '2026-11-24T14:29Z')).toBe('');
    expect(thenOf(window, '2026-11-24T16:29Z')).toBe('nothing lost by waiting');
    expect(thenOf(unknownClosing, '2026-11-24T16:29Z')).toBe('');
  });
});

describe('colour follows what would be lost', () => {
  test.each<[string, Window, string, string]>([
    ['drying', clearCoat, '2026-11-24T14:29Z', 'quiet'],
    ['open for hours', varnish, '2026-11-24T14:29Z', 'go'],
    ['closing within the hour', varnish, '2026-11-24T17:45Z', 'work lost'],
    ['closed at the price of work', varnish, '2026-11-24T19:00Z', 'work lost'],
    ['spoiling within ten minutes', bleach, '2026-12-03T16:41Z', 'spoils'],
    ['spoiling now', bleach, '2026-12-03T16:45Z', 'spoils'],
    ['barred', aerosol, '2026-12-03T17:00Z', 'keep off'],
    ['nothing to lose', glueUp, '2026-11-24T16:00Z', 'go'],
  ])('%s', (_, window, now, role) => {
    expect(roleOf(window, now)).toBe(role);
  });
});
