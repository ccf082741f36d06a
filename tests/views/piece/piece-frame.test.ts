import { describe, expect, test } from 'vitest';
import { plain } from '../../../src/views/drawing/index.ts';
import { pieceScreen } from '../../../src/views/piece/index.ts';
import type { PieceState } from '../../../src/views/screens.ts';
import type { PingSense } from '../../../src/tracker/bench/index.ts';
import { hour, minute } from '../../../src/tracker/time/index.ts';
import { shippedProduct } from '../../support/shipped.ts';
import {
  at,
  ping,
  recoat,
  rowsOf,
  sense,
  snapshotOf,
  step,
  viewOf,
  Facts,
  type Size,
} from '../support/bench-of.ts';
import { fitsEverywhere } from '../support/fits.ts';
import { rawStool, stool, stoolSteps, twoPartBleach } from './invented-stool.ts';

const now = at('24 14:29');
const opened: PieceState = { is: 'piece', piece: 'p3', at: null };

const drawnAt = (facts: Facts, instant: number, state = opened, size: Size = [80, 24]) =>
  pieceScreen.draw(state, viewOf(snapshotOf(facts.bench()), instant, size));

const rows = (facts: Facts, instant = now, state = opened, size: Size = [80, 24]) =>
  rowsOf(drawnAt(facts, instant, state, size));

describe('a piece in the middle of its schedule', () => {
  test('shows steps with minutes, what was expected, what windows showed, and what runs', () => {
    expect(rows(stool(), at('24 12:41'))).toEqual([
      '3 Beech stool   invented schedule   hardwood                 promised Sat 28 Nov',
      '1.9 m2   made 1950',
      '   step                                 min expected  window',
      '   1 look over, lead test                18    20-45',
      '   2 strip, test scrape                  64    20-45',
      '   3 bleach A, then B                    14    20-45  after 11 min: B on',
      '   4 clear coat 1 of 3                   15    20-45  ready after 3 h 50',
      '   5 scuff 320                           12    20-45',
      '   6 clear coat 2 of 3                   22    20-45  drying, try it 13:22',
      '>  7 scuff 400                            -     9-13  from 13:22',
      '   8 clear coat 3 of 3                    -    19-27  14:22 to 23:00',
      '   9 refit, wrap                          -    20-45  wrap after 72 h',
      '     so far, beside setup 18            145  to go 53 to 80, 4 times in 5',
      '',
      'drying   │····················(─────────┊─────────────────────────────',
      'opens    13:22  label 2 h, from last stroke 11:22',
      'closes   23:00  label 12 h, from first stroke 11:00; then scuff 320 first',
      'caution  Dust mask on.',
      '',
      '',
      'Try it from 13:22.  Enter: pick up scuff 400',
      'i insert  e repeat  x skip  w reword  , step earlier  . step later  a answer',
      'p product  n note  o describe  l parts  u moisture  m matches  f from the cold',
      'g coat weight  c cautions  j job card  y off the bench  Esc bench',
    ]);
  });

  test('of a stripper that was washed off tells how long it worked, not how long it dried till the wash', () => {
    const facts = new Facts()
      .piece(
        '16 09:00',
        3,
        'Beech stool',
        [
          step('strip', 'strip', { product: 'solvent-stripper' }),
          step('wash', 'wash off', { product: 'water-rinse' }),
          step('sand', 'sand 120', { needs: ['dry'] }),
        ],
        [shippedProduct('solvent-stripper'), shippedProduct('water-rinse')],
      )
      .stamp('24 10:00', 3, 'strip', 'first-stroke')
      .done('24 11:10', 3, 'strip')
      .stamp('24 11:20', 3, 'wash', 'first-stroke')
      .done('24 11:30', 3, 'wash');
    const told = rows(facts, at('24 12:00')).join('\n');
    expect(told).toMatch(/1 strip .* after 70 min: test scrape\n/);
    expect(told).toMatch(/2 wash off .* drying, try it Wed 11:30\n/);
    expect(told).toMatch(/3 sand 120 .* from Wed 11:30\n/);
  });

  test('of a coat that another one follows tells no closing that only the other one has', () => {
    const coat = { product: 'alkyd-enamel', stamps: [], stepClass: 'coat, brushed' } as const;
    const facts = new Facts()
      .piece(
        '24 09:00',
        3,
        'Beech stool',
        [
          step('below', 'enamel on undersides', coat),
          step('first', 'enamel coat 1 of 2', { ...coat, needs: ['turn over'] }),
          step('second', 'enamel coat 2 of 2', { ...coat, needs: ['recoat'] }),
        ],
        [shippedProduct('alkyd-enamel')],
      )
      .pickUp('24 09:10', 3, 'below')
      .done('24 09:30', 3, 'below')
      .putDown('24 09:30', 's3-24 09:10');
    const told = rows(facts, at('24 12:00')).join('\n');
    expect(told).toContain('opens    Thu 09:30  label 48 h, from last stroke 09:30');
    expect(told).not.toContain('closes');
    // The coat after which nothing stands between is waited for itself.
    facts.pickUp('26 10:00', 3, 'first').done('26 10:20', 3, 'first');
    expect(rows(facts, at('26 10:30')).join('\n')).toContain('closes');
  });

  test.each([
    ['24', 'drying, try it Wed 22:30', 'Wed 22:30 to Thu 22:15'],
    ['12', 'drying, try it Wed 10:30 pm', 'Wed 10:30 pm to Thu 10:15 pm'],
  ] as const)('tells times of the other day whole by a clock of %s hours', (hours, ...told) => {
    const waits = [recoat(37 * hour, 61 * hour)];
    const facts = new Facts()
      .piece('24 09:00', 3, 'Beech stool', [
        step('coat', 'clear coat 1 of 2, sides first, top last', { windows: waits }),
        step('next', 'clear coat 2 of 2, sides first, top last', { needs: ['recoat'] }),
      ])
      .pickUp('24 09:10', 3, 'coat')
      .stamp('24 09:15', 3, 'coat', 'first-stroke')
      .stamp('24 09:30', 3, 'coat', 'last-stroke')
      .done('24 09:30', 3, 'coat')
      .tell('24 09:35', 'put-down', { session: 's3-24 09:10' });
    const drawn = (when: string): string => {
      const snapshot = snapshotOf(facts.bench());
      const view = viewOf({ ...snapshot, shop: { ...snapshot.shop, hours } }, at(when));
      return rowsOf(pieceScreen.draw(opened, view)).join('\n');
    };
    const [drying, open] = told;
    expect(drawn('24 12:00')).toMatch(new RegExp(`  ${drying}\n.*  ${open}\n`));
  });

  test('at forty columns keeps the same, without the windows column', () => {
    const drawn = rows(stool(), at('24 12:41'), opened, [40, 20]);
    expect(drawn).toHaveLength(20);
    expect(drawn).toContain('>  7 scuff 400                -     9-13');
    expect(drawn).toContain('opens    13:22  label 2 h, from last');
    expect(drawn.at(-1)).toMatch(/Esc bench$/);
  });

  test('the bar stands under the rows in the colour of its state, and nothing but the marked row is strong', () => {
    const { lines } = drawnAt(stool(), at('24 13:30'));
    const strong = lines
      .filter((line) => line[0]?.role === 'strong')
      .map((line) => plain(line).trim());
    expect(strong).toEqual([
      expect.stringMatching(/^3 Beech stool/),
      expect.stringMatching(/^> {2}7 scuff 400/),
      expect.stringMatching(/^Try it since 13:22\./),
    ]);
    const bar = lines.find((line) => plain(line).startsWith('try it'));
    expect(bar?.some(({ role }) => role === 'go')).toBe(true);
  });

  test('figures that the air changed are told with their factor and the air', () => {
    const readings = [{ at: at('24 11:00'), tempC: 15, rh: 65 }];
    const slowed = (span: { ms: number; may?: string }, from: number) =>
      from + span.ms * (span.may === 'grow' ? 1.9 : 1);
    const slow: PingSense = {
      ...sense,
      spanEnd: slowed,
      spanAir: (span, from) => ({ end: slowed(span, from), readings, night: null }),
    };
    const snapshot = snapshotOf(stool().bench(), { sense: slow, readings });
    const drawn = rowsOf(pieceScreen.draw(opened, viewOf(snapshot, at('24 12:41'))));
    expect(drawn).toContain(
      'opens    15:10  label 2 h x 1.9 for 15 C 65 %, from last stroke 11:22',
    );
  });

  test('a stroke that was never stamped is told as assumed', () => {
    const unstamped = rawStool().pickUp('24 10:50', 3, 'coat1').done('24 11:22', 3, 'coat1');
    expect(rows(unstamped, now, { ...opened, at: 'coat1' }).join('\n')).toContain(
      'closes   22:50  label 12 h, from pick-up 10:50, assumed; then scuff 320 first',
    );
  });

  test('seconds are asked for only while a count-down is below ten minutes', () => {
    expect(drawnAt(stool(), at('24 12:41')).ticking).toBe(false);
    expect(drawnAt(stool(), at('24 13:15')).ticking).toBe(true);
    expect(drawnAt(rawStool(), now).ticking).toBe(false);
  });

  test('a step in hand, a skipped one, and one that is done without minutes are told in words and shapes', () => {
    const facts = stool()
      .tell('24 13:00', 'step-skipped', { piece: 'p3', step: 'scuff2', skipped: true })
      .tell('24 13:01', 'step-done', {
        piece: 'p3',
        part: null,
        step: 'wrap',
        pass: 1,
        air: null,
        expectation: { minutes: 30, low: 20, high: 45, chance: 0.8, model: 'finishing schedule' },
      })
      .pickUp('24 14:20', 3, 'coat3');
    const drawn = rows(facts);
    expect(drawn).toContainEqual(expect.stringMatching(/^ {3}7 scuff 400 +skip$/));
    expect(drawn).toContainEqual(expect.stringMatching(/▶ ?8 clear coat 3 of 3 +9 /));
    expect(drawn).toContainEqual(expect.stringMatching(/^ {3}9 refit, wrap +done/));
  });

  test('parts that are further than others say so, and stand in the head', () => {
    const facts = stool()
      .tell('24 13:00', 'parts-named', {
        piece: 'p3',
        parts: [
          { id: 'seat', name: 'seat' },
          { id: 'legs', name: 'legs' },
        ],
      })
      .done('24 13:30', 3, 'scuff2', 'seat');
    const drawn = rows(facts);
    expect(drawn[1]).toBe('parts: seat, legs   1.9 m2   made 1950');
    expect(drawn).toContainEqual(expect.stringMatching(/7 scuff 400 .* seat done$/));
  });

  test('a hold and the last note are shown', () => {
    const facts = stool()
      .tell('24 13:00', 'hold-placed', {
        piece: 'p3',
        reason: 'hinge plates',
        askAgain: '2026-11-26',
      })
      .tell('24 13:05', 'note-written', { piece: 'p3', step: null, text: 'old dowel, left in' })
      .tell('24 13:06', 'note-written', { piece: 'p3', step: 'coat2', text: 'one run, left side' });
    expect(rows(facts)[1]).toBe('hold: hinge plates, ask Thu 26 Nov   1.9 m2   made 1950');
    expect(rows(facts)).toContain('note     13:05: old dowel, left in');
    expect(rows(facts, now, { ...opened, at: 'coat2' })).toContain(
      'note     13:06: one run, left side',
    );
  });
});

describe('cautions', () => {
  const marked = (facts: Facts, step: string): readonly string[] =>
    rows(facts, now, { ...opened, at: step });

  test('are said in full the first time a product is used on the piece', () => {
    const drawn = marked(rawStool(), 'coat1');
    expect(drawn).toContain('caution  Label first. Fresh air while it dries.');
    expect(drawn).toContain('         Below 10 C it does not form a film.');
  });

  test('then in one line, with a key for the rest', () => {
    const drawn = marked(stool(), 'coat3');
    expect(drawn).toContain('caution  Label first. Fresh air while it dries. (1 more: c)');
    expect(drawn.join('\n')).not.toContain('Below 10 C');
  });

  test('deadly ones always in full', () => {
    const again = rawStool()
      .done('24 09:00', 3, 'bleach')
      .tell('24 09:10', 'step-inserted', {
        piece: 'p3',
        before: 'coat1',
        copyOf: 'bleach',
        step: {
          ...rawStool().bench().pieces.get('p3')!.steps[2]!,
          id: 'bleach2',
          name: 'bleach again',
        },
      });
    for (const facts of [again, stool()]) {
      const drawn = marked(facts, facts === again ? 'bleach2' : 'bleach');
      expect(drawn).toContain(
        'caution  Lye and peroxide blind and burn: face shield, long gloves.',
      );
      expect(drawn).toContain('         Never A and B in one vessel.');
    }
  });

  test('deadly ones keep their rows where everything else gives way', () => {
    for (const size of [
      [40, 12],
      [32, 10],
      [60, 11],
    ] as const) {
      const drawn = rows(rawStool(), now, { ...opened, at: 'bleach' }, size)
        .join(' ')
        .replaceAll(/\s+/g, ' ');
      expect(drawn).toContain('Lye and peroxide blind and burn: face shield, long gloves.');
      expect(drawn).toContain('3 bleach A, th');
    }
  });

  test('of one that is too long for the screen the beginning is shown, and the key that shows the rest', () => {
    const long = {
      ...twoPartBleach,
      cautions: Array.from({ length: 9 }, (_, index) => `Caution ${index + 1}: it burns.`),
    };
    const deadly = new Facts().piece('24 08:00', 3, 'Beech stool', stoolSteps, [long]);
    const drawn = rows(deadly, now, { ...opened, at: 'bleach' }, [80, 12]);
    expect(drawn).toContain('caution  Caution 1: it burns.');
    expect(drawn).toContain('         c: cautions in full');
    expect(drawn).toContainEqual(expect.stringMatching(/^> {2}3 bleach A/));
    expect(drawn.at(-1)).toMatch(/Esc bench$/);
  });

  test('a step without any has no such line', () => {
    expect(marked(rawStool(), 'look').filter((row) => row.startsWith('caution'))).toEqual([]);
  });
});

describe('room', () => {
  const many = (): Facts => {
    const facts = rawStool();
    for (let index = 0; index < 30; index += 1)
      facts.tell('24 09:00', 'step-inserted', {
        piece: 'p3',
        before: null,
        step: {
          ...rawStool().bench().pieces.get('p3')!.steps[0]!,
          id: `more${index}`,
          name: `more ${index}`,
        },
      });
    return facts;
  };

  test('a long list scrolls with the marked step, and says which part is shown', () => {
    for (const index of [0, 14, 29]) {
      const drawn = rows(many(), now, { ...opened, at: `more${index}` });
      expect(drawn.filter((row) => row.startsWith('>'))).toEqual([
        expect.stringContaining(`more ${index} `),
      ]);
      expect(drawn).toHaveLength(24);
      expect(drawn[1]).toMatch(/step, \d+ to \d+ of 39/);
    }
  });

  test('fits everywhere, whatever was written on it', () => {
    const facts = stool()
      .tell('24 13:00', 'piece-described', {
        piece: 'p3',
        changes: { name: `\u001b[2J椅子 ${'stool '.repeat(20)}`, kind: 'x'.repeat(90) },
      })
      .tell('24 13:01', 'step-reworded', {
        piece: 'p3',
        step: 'coat2',
        name: `\u0007clear ${'coat '.repeat(40)}`,
      })
      .tell('24 13:02', 'note-written', {
        piece: 'p3',
        step: 'coat2',
        text: `\u202e${'note '.repeat(60)}`,
      });
    const view = viewOf(snapshotOf(facts.bench()), now);
    for (const each of ['coat2', 'bleach', 'wrap'])
      fitsEverywhere(
        (size) => pieceScreen.draw({ ...opened, at: each }, { ...view, ...size }),
        /Esc bench/,
      );
    for (const facts2 of [many(), rawStool()])
      fitsEverywhere(
        (size) => pieceScreen.draw(opened, { ...viewOf(snapshotOf(facts2.bench()), now), ...size }),
        /Esc bench/,
      );
    const told = { message: { text: `Not moved: ${'because '.repeat(60)}`, refused: true } };
    fitsEverywhere((size) => pieceScreen.draw(opened, { ...view, ...told, ...size }), /Esc bench/);
  });

  test('a loud ping stands in the second row', () => {
    const pings = [
      ping('c1', '24 14:28', '2 Wall shelf: B on, by 14:40. Late: rinse, dry, start over.', {
        loud: true,
      }),
    ];
    const view = viewOf(snapshotOf(stool().bench(), { pings }), now);
    const frame = pieceScreen.draw(opened, view);
    expect(rowsOf(frame)[1]).toContain('!! 2 Wall shelf: B on, by 14:40.');
    expect(frame.lines[1]?.[0]?.role).toBe('loud');
  });

  test('a piece that has left the bench meanwhile says so', () => {
    const facts = stool().tell('24 14:00', 'piece-left-bench', { piece: 'p3' });
    expect(rows(facts)[0]).toBe('That piece is not on the bench any more.');
  });
});

test('a piece whose steps are all done keeps the last one marked', () => {
  const facts = stool();
  for (const id of ['scuff2', 'coat3', 'wrap']) facts.done('24 14:00', 3, id);
  const drawn = rows(facts, now + 100 * 24 * 60 * minute);
  expect(drawn).toContainEqual(expect.stringMatching(/^> {2}9 refit, wrap/));
  expect(drawn).toContain('Every step is done');
  expect(drawn.find((row) => row.includes('so far'))).not.toContain('to go');
});

test('the sum below the minutes is that of its rows; what is in none of them stands beside it', () => {
  const facts = new Facts()
    .piece('24 09:00', 1, 'Oak settle', [step('sand', 'sand 120', { setupMinutes: 0 })])
    .pickUp('24 09:10', 1, 'sand')
    .putDown('24 09:40', 's1-24 09:10')
    .pickUp('24 10:00', 1, null)
    .putDown('24 10:07', 's1-24 10:00');
  const total =
    rows(facts, at('24 10:10'), { ...opened, piece: 'p1' }).find((row) => row.includes('so far')) ??
    '';
  expect(total).toMatch(/^ {5}so far, beside other 7 +30 /);
  const narrow = rows(facts, at('24 10:10'), { ...opened, piece: 'p1' }, [40, 24]);
  expect(narrow.find((row) => row.includes('so far'))).toMatch(/^ {5}so far; other 7 +30 /);
});

describe('the window column', () => {
  /** A coat from 9:00 to 9:30 that the next one may follow after two hours. */
  const coated = () =>
    new Facts()
      .piece('24 08:00', 3, 'Stool', [
        step('coat', 'coat 1', {
          windows: [
            {
              ...recoat(2 * hour, 12 * hour),
              begins: { events: ['first-stroke'], which: 'first', assume: true },
            },
          ],
        }),
        step('next', 'coat 2', { needs: ['recoat'] }),
      ])
      .stamp('24 09:00', 3, 'coat', 'first-stroke')
      .done('24 09:30', 3, 'coat');
  const columnOf = (facts: Facts, name: string, when: string): string =>
    rows(facts, at(when))
      .find((row) => row.includes(` ${name} `))
      ?.slice(54)
      .trim() ?? '';

  test('counts from the last stroke how long a coat took till it was found ready', () => {
    const ready = coated().tell('24 11:40', 'checked', {
      piece: 'p3',
      part: null,
      step: 'coat',
      window: 'p3/coat/recoat//1/',
      finding: 'ready',
      air: null,
    });
    const done = ready.stamp('24 12:00', 3, 'next', 'first-stroke').done('24 12:10', 3, 'next');
    expect(columnOf(done, 'coat 1', '24 12:20')).toBe('ready after 2 h 10');
  });

  test('of two windows that a step waits for tells the later opening and the earlier closing', () => {
    const both = new Facts()
      .piece('24 08:00', 3, 'Stool', [
        step('coat', 'coat 1', {
          windows: [
            recoat(2 * hour, 6 * hour),
            { ...recoat(3 * hour, 5 * hour), id: 'scuff', milestone: 'scuff' },
          ],
        }),
        step('next', 'coat 2', { needs: ['recoat', 'scuff'] }),
      ])
      .stamp('24 09:00', 3, 'coat', 'first-stroke')
      .done('24 09:30', 3, 'coat');
    expect(columnOf(both, 'coat 2', '24 10:00')).toBe('12:30 to 14:00');
  });
});
