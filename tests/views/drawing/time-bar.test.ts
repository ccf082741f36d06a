import fc from 'fast-check';
import { describe, expect, it, test } from 'vitest';
import {
  barWidth,
  glyphSets,
  lineWidth,
  plain,
  timeBar,
  type GlyphSet,
  type TimeBarInput,
} from '../../../src/views/drawing/index.ts';
import { noonAfterNight } from '../../../src/views/format/index.ts';
import type { TimedStretch } from '../../../src/tracker/windows/index.ts';
import { stretchesOf, type Drawn } from '../format/invented-windows.ts';

const minute = 60_000;
const hour = 60 * minute;
const afternoon = Date.parse('2026-11-24T14:29Z');
const tense = Date.parse('2026-12-03T16:41:20Z');

const bar = (
  drawn: readonly Drawn[],
  now: number,
  width: number,
  more: Partial<TimeBarInput> = {},
): string =>
  plain(
    timeBar({
      now,
      stretches: stretchesOf(drawn),
      closed: false,
      width,
      farEnd: noonAfterNight(now, 'UTC'),
      glyphs: 'blocks',
      uncertain: false,
      ...more,
    }),
  );

const varnish: readonly Drawn[] = [
  ['2026-11-23T18:00Z', 'wait'],
  ['2026-11-24T10:40Z', 'go'],
  ['2026-11-24T18:30Z', 'go after work', 'costs work'],
];
const clearCoat: readonly Drawn[] = [
  ['2026-11-24T11:22Z', 'wait'],
  ['2026-11-24T15:10Z', 'go'],
  ['2026-11-24T23:00Z', 'go after work', 'costs work'],
];
const glueUp: readonly Drawn[] = [
  ['2026-11-24T14:20Z', 'wait'],
  ['2026-11-24T15:20Z', 'go'],
];
const barred: readonly Drawn[] = [
  ['2026-11-24T10:00Z', 'keep off', 'costs work'],
  ['2026-11-25T08:55Z', 'go'],
];
const cure: readonly Drawn[] = [
  ['2026-11-24T09:00Z', 'wait'],
  ['2026-12-14T09:00Z', 'go'],
];
const coldAndDamp: readonly Drawn[] = [
  ['2026-11-24T14:00Z', 'wait'],
  ['2026-11-25T01:30Z', 'go after work', 'costs work'],
];
const dwell = (opens: number, closes: number): readonly Drawn[] => [
  [afternoon - 3 * minute, 'wait'],
  [afternoon + opens * minute, 'go'],
  [afternoon + closes * minute, 'late', 'spoils'],
];

describe('at 30 cells, 14:29', () => {
  test.each<[string, readonly Drawn[], string]>([
    ['a piece without a window', [], '│               ┊             '],
    ['try it till 18:30', varnish, '│███████████████┊█)▒▒▒▒▒▒▒▒▒▒▒'],
    ['drying, try it 15:10, open to 23:00', clearCoat, '│··········(████┊████)▒▒▒▒▒▒▒▒'],
    ['in clamps till 15:20', glueUp, '│············(──┊─────────────'],
    ['keep off till 08:55', barred, '│×××××××××××××××┊×××××××××××(─'],
    ['a cure past the right edge', cure, '│···············┊············›'],
    ['opening past closing', coldAndDamp, '│···············┊······(▒▒▒▒▒▒'],
    ['a dwell with a hard end', dwell(4, 8), '│·(]!!!!!!!!!!!!┊!!!!!!!!!!!!!'],
    [
      'a dwell that opens and ends in one column: the end is drawn',
      dwell(4, 6),
      '│·]!!!!!!!!!!!!!┊!!!!!!!!!!!!!',
    ],
    ['wiped too late', [[afternoon - minute, 'late', 'spoils']], '│!!!!!!!!!!!!!!!┊!!!!!!!!!!!!!'],
    [
      'within the hour or from Wed',
      [
        ['2026-11-24T14:00Z', 'go'],
        ['2026-11-24T14:50Z', 'keep off', 'costs work'],
        ['2026-11-25T08:55Z', 'go'],
      ],
      '│█████]×××××××××┊×××××××××××(─',
    ],
    [
      'closing past the right edge',
      [
        [afternoon, 'go'],
        ['2026-11-25T13:00Z', 'late', 'spoils'],
      ],
      '│███████████████┊████████████›',
    ],
    [
      'an opening just before the right edge, closing past it',
      [
        [afternoon, 'wait'],
        ['2026-11-25T11:30Z', 'go'],
        ['2026-11-25T13:00Z', 'late', 'spoils'],
      ],
      '│···············┊············(',
    ],
    [
      'what opens this very instant is open',
      [
        [afternoon - hour, 'wait'],
        [afternoon, 'go'],
      ],
      '│───────────────┊─────────────',
    ],
  ])('%s', (_, drawn, expected) => {
    expect(bar(drawn, afternoon, 30)).toBe(expected);
  });

  it('in ASCII', () => {
    expect(bar(clearCoat, afternoon, 30, { glyphs: 'ascii' })).toBe(
      '|..........(####:####)%%%%%%%%',
    );
    expect(bar(barred, afternoon, 30, { glyphs: 'ascii' })).toBe('|xxxxxxxxxxxxxxx:xxxxxxxxxxx(-');
    expect(bar(cure, afternoon, 30, { glyphs: 'ascii' })).toBe('|...............:............>');
  });

  it('marks the first edge where it hangs on something assumed', () => {
    expect(bar(clearCoat, afternoon, 30, { uncertain: true })).toBe(
      '│··········?████┊████)▒▒▒▒▒▒▒▒',
    );
    expect(bar(varnish, afternoon, 30, { uncertain: true })).toBe('│███████████████┊█?▒▒▒▒▒▒▒▒▒▒▒');
  });

  it('is empty when the window is closed', () => {
    expect(bar(clearCoat, afternoon, 30, { closed: true })).toBe('│               ┊             ');
  });
});

describe('at 30 cells, 16:41:20', () => {
  test.each<[string, readonly Drawn[], string]>([
    [
      'B now, till 16:42',
      [
        ['2026-12-03T16:30Z', 'wait'],
        ['2026-12-03T16:40Z', 'go'],
        ['2026-12-03T16:42Z', 'late', 'spoils'],
      ],
      '│]!!!!!!!!!!!!!!┊!!!!!!!!!!!!!',
    ],
    [
      'pass 4 till 16:49, then keep off till Sat',
      [
        ['2026-12-03T15:59Z', 'go'],
        ['2026-12-03T16:49Z', 'keep off', 'costs work'],
        ['2026-12-05T06:19Z', 'go'],
      ],
      '│█]×××××××××××××┊××××××××××××›',
    ],
    [
      'try it till 23:00',
      [
        ['2026-12-03T14:00Z', 'go'],
        ['2026-12-03T23:00Z', 'go after work', 'costs work'],
      ],
      '│███████████████┊███)▒▒▒▒▒▒▒▒▒',
    ],
    ['clamps off since 16:20', [['2026-12-03T16:20Z', 'go']], '│───────────────┊─────────────'],
  ])('%s', (_, drawn, expected) => {
    expect(bar(drawn, tense, 30)).toBe(expected);
  });
});

describe('at other widths', () => {
  test.each<[number, readonly Drawn[], string]>([
    [61, [], '│                              ┊                             '],
    [61, varnish, '│██████████████████████████████┊████)▒▒▒▒▒▒▒▒▒▒▒▒▒▒▒▒▒▒▒▒▒▒▒▒'],
    [61, clearCoat, '│····················(█████████┊██████████)▒▒▒▒▒▒▒▒▒▒▒▒▒▒▒▒▒▒'],
    [61, glueUp, '│·························(────┊─────────────────────────────'],
    [61, barred, '│××××××××××××××××××××××××××××××┊××××××××××××××××××××××××(────'],
    [20, varnish, '│██████████┊█)▒▒▒▒▒▒'],
    [20, clearCoat, '│······(███┊██)▒▒▒▒▒'],
    [20, glueUp, '│········(─┊────────'],
    [20, barred, '│××××××××××┊××××××(─'],
    [12, clearCoat, '│····(█┊█)▒▒'],
    [12, dwell(4, 6), '│]!!!!!┊!!!!'],
    [0, clearCoat, ''],
    [4, clearCoat, ''],
  ])('%i cells', (width, drawn, expected) => {
    expect(bar(drawn, afternoon, width)).toBe(expected);
  });

  test.each([
    [200, 61],
    [120, 61],
    [119, 30],
    [80, 30],
    [79, 20],
    [40, 20],
    [39, 12],
    [30, 12],
    [29, 0],
  ])('%i columns leave %i', (columns, width) => {
    expect(barWidth(columns)).toBe(width);
  });
});

it('colours by what is lost', () => {
  const line = timeBar({
    now: afternoon,
    stretches: stretchesOf(clearCoat),
    closed: false,
    width: 30,
    farEnd: noonAfterNight(afternoon, 'UTC'),
    glyphs: 'blocks',
    uncertain: false,
  });
  expect(line).toEqual([
    { text: '│', role: 'text' },
    { text: '··········', role: 'quiet' },
    { text: '(████', role: 'go' },
    { text: '┊', role: 'quiet' },
    { text: '████', role: 'go' },
    { text: ')▒▒▒▒▒▒▒▒', role: 'work lost' },
  ]);
});

const anyStretch = fc.record({
  meaning: fc.constantFrom('wait', 'go', 'go after work', 'keep off', 'late' as const),
  loss: fc.constantFrom('spoils', 'costs work', 'costs nothing' as const),
  length: fc.oneof(
    fc.constant(0),
    fc.integer({ min: 1, max: 30 * hour }),
    fc.integer({ min: 1, max: 20 * minute }),
  ),
});

/** Stretches of any meaning and length, some of no length, from before 14:29 on; the last one never ends. */
const anyStretches: fc.Arbitrary<readonly TimedStretch[]> = fc
  .tuple(fc.integer({ min: -20 * hour, max: 0 }), fc.array(anyStretch, { maxLength: 6 }))
  .map(([start, drawn]) => {
    let reached = afternoon + start;
    return drawn.map(({ meaning, loss, length }, index) => {
      const begins = reached;
      reached += length;
      return { meaning, loss, begins, ends: index === drawn.length - 1 ? null : reached };
    });
  });

const anyBar = fc.record({
  stretches: anyStretches,
  closed: fc.boolean(),
  width: fc.constantFrom(5, 6, 12, 20, 30, 61),
  glyphs: fc.constantFrom<GlyphSet>('blocks', 'ascii'),
  uncertain: fc.boolean(),
});

/** The columns of a bar, without mark and break, each with the time that it stands for. */
function columnsOf(
  text: string,
  farEnd: number,
): readonly { sign: string; begins: number; ends: number }[] {
  const signs = [...text];
  const left = Math.floor(signs.length / 2);
  const right = signs.length - 2 - left;
  const hourEnds = afternoon + hour;
  return signs
    .filter((_, cell) => cell !== 0 && cell !== left + 1)
    .map((sign, column) => {
      const [from, length, place] =
        column < left
          ? [afternoon, hour / left, column]
          : [hourEnds, (farEnd - hourEnds) / right, column - left];
      return { sign, begins: from + place * length, ends: from + (place + 1) * length };
    });
}

describe('whatever the window', () => {
  const farEnd = noonAfterNight(afternoon, 'UTC');
  const draw = (input: Omit<TimeBarInput, 'now' | 'farEnd'>): string =>
    plain(timeBar({ ...input, now: afternoon, farEnd }));

  it('takes exactly its cells, with one now mark first and one break in its place', () => {
    fc.assert(
      fc.property(anyBar, (input) => {
        const line = timeBar({ ...input, now: afternoon, farEnd });
        const text = plain(line);
        const { now, break: middle } = glyphSets[input.glyphs];
        expect(lineWidth(line)).toBe(input.width);
        expect([...text]).toHaveLength(input.width);
        expect(text.indexOf(now)).toBe(0);
        expect(text.lastIndexOf(now)).toBe(0);
        expect([...text].indexOf(middle)).toBe(Math.floor(input.width / 2) + 1);
      }),
    );
  });

  it('draws go only in columns that lie wholly in it, and edges in the column in which they fall', () => {
    fc.assert(
      fc.property(anyBar, (input) => {
        const stretches = input.closed
          ? []
          : input.stretches.filter(({ begins, ends }) => ends === null || ends > begins);
        const signs = glyphSets[input.glyphs];
        for (const { sign, begins, ends } of columnsOf(draw(input), farEnd)) {
          const met = stretches.filter(
            (each) => each.begins < ends - 1 && (each.ends ?? Infinity) > begins + 1,
          );
          const edges = stretches.filter(
            (each, index) => index > 0 && each.begins >= begins - 1 && each.begins <= ends + 1,
          );
          if (sign === signs.goTill || sign === signs.goAfter) {
            expect(met.length).toBeGreaterThan(0);
            expect(
              met.every((each) => each.meaning === 'go' || each.loss === 'costs nothing'),
            ).toBe(true);
          }
          if (sign === signs.opens)
            expect(edges.some((each) => /go|late/.test(each.meaning))).toBe(true);
          if (sign === signs.closes || sign === signs.shuts)
            expect(edges.some((each) => each.meaning !== 'go')).toBe(true);
          if (sign === signs.beyond)
            expect(stretches.some((each, index) => index > 0 && each.begins >= farEnd)).toBe(true);
        }
      }),
      { numRuns: 500 },
    );
  });

  it('always shows a closing that spoils within its axis', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 1, max: farEnd - afternoon - 1 }),
        fc.constantFrom(12, 20, 30, 61),
        (away, width) => {
          const text = bar(
            [
              [afternoon - hour, 'wait'],
              [afternoon + Math.floor(away / 2), 'go'],
              [afternoon + away, 'late', 'spoils'],
            ],
            afternoon,
            width,
          );
          expect([...text].filter((sign) => sign === ']')).toHaveLength(1);
          expect(text.slice(0, text.indexOf(']'))).not.toContain('!');
          expect(text.slice(text.indexOf(']') + 1)).not.toMatch(/[█─(]/);
        },
      ),
    );
  });
});
