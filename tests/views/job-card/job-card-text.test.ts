import stringWidth from 'string-width';
import { describe, expect, it } from 'vitest';
import { jobCard } from '../../../src/tracker/bench/index.ts';
import { minute, type Instant } from '../../../src/tracker/time/index.ts';
import type { WindowRule } from '../../../src/tracker/windows/index.ts';
import { jobCardText } from '../../../src/views/job-card/plain.ts';
import type { Shop } from '../../../src/views/port.ts';
import {
  inventShop,
  scheduleOf,
  step,
  type InventedShop,
} from '../../tracker/estimate/invented-shop.ts';
import { inventedWork, session } from '../hours/invented-work.ts';
import { at, sense, shop as utcShop } from '../support/bench-of.ts';

const textOf = (
  shop: InventedShop,
  piece: string,
  now: Instant,
  columns = 80,
  here: Shop = utcShop,
): string => jobCardText(jobCard(shop.bench(), shop.piece(piece), now, sense), now, here, columns);

/** The stool of the invented shop, with everything that a card can tell. */
function full(): { readonly shop: InventedShop; readonly stool: string } {
  const { shop, stool, rack } = inventedWork();
  const [lunch, last] = shop.bench().sessions.slice(-2);
  shop.act(
    {
      do: 'write note',
      piece: stool,
      step: 'strip',
      text: 'left rear foot has an old dowel; left in',
    },
    at('17 13:35'),
  );
  shop.act(
    { do: 'place hold', piece: stool, reason: 'hinge plates', askAgain: '2026-11-26' },
    at('17 13:36'),
  );
  shop.act({ do: 'lift hold', piece: stool }, at('18 08:00'));
  shop.act({ do: 'repeat step', piece: stool, step: 'scuff' }, at('18 08:05'));
  shop.act(
    { do: 'correct session', session: lunch?.id ?? '', end: at('17 11:05') },
    at('22 09:00'),
  );
  const targets = [{ piece: rack, part: null, step: 'look' }];
  shop.act({ do: 'correct session', session: last?.id ?? '', targets }, at('22 09:01'));
  session(shop, stool, '23 09:00', '23 09:20');
  shop.act({ do: 'first stroke', piece: stool, part: null }, at('23 13:10'));
  shop.act({ do: 'done', piece: stool, part: null }, at('23 13:25'));
  shop.act({ do: 'put down', piece: stool }, at('23 13:32'));
  shop.act(
    { do: 'check', piece: stool, part: null, finding: 'not yet', shown: 'gums the paper' },
    at('23 17:15'),
  );
  shop.act(
    { do: 'start timer', piece: stool, label: 'clamps', ms: 35 * minute },
    at('12-01 09:00'),
  );
  return { shop, stool };
}

describe('a job card as plain text', () => {
  it('tells everything done to a piece and put on it, in order', () => {
    const { shop, stool } = full();
    expect(textOf(shop, stool, at('12-01 10:00'))).toBe(`Job card: 1 Beech stool
hardwood, about 1.2 m2; in Mon 16 Nov; Invented schedule

2026-11  step                    min  what, and under what conditions
16 09:10 look over, lead test     18
16 09:47 strip, test scrape       73  09:47 to 10:51; 16 C 60 %
17 09:00 sand 100                 45
17 10:20 sand 120                 45  session corrected 22 Nov: was 165
17 13:10 sand 150                  -  session of 21 min moved away 22 Nov to
                                      Book rack
17 13:35 note                         strip, test scrape: left rear foot has an
                                      old dowel; left in
17 13:36 hold                         hinge plates; lifted 18 Nov 08:00
18 08:05 step put in                  scuff 320, again
23 09:00 vinegar, then clear      20
         water twice
23 13:10 clear coat 1             22  Waterborne clear; 13:10 to 13:25;
                                      16 C 60 %
23 17:15 check                     -  clear coat 1; not yet: gums the paper;
                                      3 h 50 after last stroke; 16 C 60 %
2026-12
01 09:00 timer                        clamps, 35 min

to do    scuff 320, scuff 320, again, clear coat 2, refit, wrap
minutes  223 in 6 sessions, 3 h 43, with setup and cleanup
`);
  });

  it('takes clock, units and width from where it is read', () => {
    const { shop, stool } = full();
    const here: Shop = { zone: 'America/New_York', hours: '12', temperature: 'F', lengths: 'in' };
    const text = textOf(shop, stool, at('23 18:00'), 120, here);
    expect(text).toContain('hardwood, about 13 sq ft; in Mon 16 Nov');
    expect(text).toContain('16 4:47 am  strip, test scrape');
    expect(text).toContain('4:47 am to 5:51 am; 61 F 60 %');
  });

  it('says what is to do, and from when it may be tried', () => {
    const { shop, stool } = full();
    expect(textOf(shop, stool, at('23 17:20'))).toContain('scuff 320 (from 17:25)');
  });

  it('never passes its width, with wide characters and names beyond any column', () => {
    const { shop, stool } = full();
    shop.act(
      {
        do: 'describe piece',
        piece: stool,
        changes: {
          name: '食器棚 a cupboard with a name that goes on for much longer than a line 🪑🪑',
        },
      },
      at('23 18:00'),
    );
    shop.act(
      { do: 'write note', piece: stool, step: null, text: `研磨研磨研磨 ${'x'.repeat(200)}` },
      at('23 18:01'),
    );
    for (const columns of [32, 40, 69, 70, 80, 120])
      for (const line of textOf(shop, stool, at('23 18:10'), columns).split('\n'))
        expect(stringWidth(line)).toBeLessThanOrEqual(columns);
  });

  it('writes out characters that would act on a terminal', () => {
    const { shop, stool } = full();
    const text = 'ends here\u001b[2J\u202e and turns';
    shop.act({ do: 'write note', piece: stool, step: null, text }, at('23 18:00'));
    const card = textOf(shop, stool, at('23 18:10'));
    expect(card).toContain(String.raw`here\x1b[2J\u202e and`);
    // eslint-disable-next-line no-control-regex -- the point is that there are none
    expect(card).toMatch(/^[^\u0000-\u0009\u000b-\u001f\u202e]*$/);
  });

  it('has something to say of a piece on which nothing was done', () => {
    const shop = inventShop();
    const piece = shop.add('Hat rack', scheduleOf([step('sand')]), at('16 09:00'));
    expect(textOf(shop, piece, at('16 10:00'))).toBe(`Job card: 1 Hat rack
in Mon 16 Nov; Invented schedule

Nothing was recorded on it yet.

to do    sand
minutes  0 in 0 sessions
`);
  });
});

describe('stamps and windows on a job card', () => {
  const wipe: WindowRule = {
    id: 'wipe',
    kind: 'chemical',
    verb: 'wipe off',
    scope: 'section',
    begins: { events: ['section-on'], which: 'first' },
    stretches: [
      { meaning: 'go', loss: 'costs nothing' },
      {
        meaning: 'late',
        loss: 'spoils',
        says: 'grabbed: wet it again',
        from: {
          kind: 'stamp',
          stamp: { events: ['section-on'], which: 'first' },
          plus: { ms: 10 * minute },
        },
      },
    ],
    closedBy: { by: 'stamp', stamp: { events: ['section-off'], which: 'first' } },
  };
  const stain = step('stain', {
    windows: [wipe],
    stamps: [
      { event: 'section-on', says: 'on', perSection: true },
      { event: 'section-off', says: 'wiped', perSection: true },
    ],
  });
  const bleach = step('bleach', {
    stamps: [
      { event: 'first-stroke', agent: 'A', says: 'A on' },
      { event: 'first-stroke', agent: 'B', says: 'B on' },
    ],
  });

  const stamped = (only: typeof stain, minutes: readonly number[]): string => {
    const shop = inventShop();
    const piece = shop.add('Hat rack', scheduleOf([only]), at('16 09:00'));
    for (const each of minutes)
      shop.act({ do: 'next stamp', piece, part: null }, at('16 10:00') + each * minute);
    shop.act({ do: 'done', piece, part: null }, at('16 10:40'));
    return textOf(shop, piece, at('16 11:00'), 120);
  };

  it('counts sections, and tells windows that were met together', () => {
    expect(stamped(stain, [0, 5, 6, 12])).toContain(
      '2 sections 10:00 to 10:40; wipe off in time, 2 times',
    );
  });

  it('tells one that was late, with what it called for', () => {
    expect(stamped(stain, [0, 5, 6, 22]).replaceAll(/\s+/g, ' ')).toContain(
      'wipe off in time, after 5 min; wipe off late, after 16 min: grabbed: wet it again',
    );
  });

  it('names what went on by its letter', () => {
    expect(stamped(bleach, [0, 11])).toContain('A 10:00, B 10:11, done 10:40');
  });

  it('tells where a stamp stood before it was moved', () => {
    const shop = inventShop();
    const piece = shop.add('Hat rack', scheduleOf([bleach]), at('16 09:00'));
    shop.act({ do: 'pick up', targets: [{ piece, part: null }] }, at('16 09:50'));
    shop.act({ do: 'first stroke', piece, part: null }, at('16 10:00'));
    shop.act({ do: 'move stamp', piece, earlier: true, ms: 4 * minute }, at('16 10:01'));
    expect(textOf(shop, piece, at('16 10:05'))).toContain('A 09:56 (first recorded 10:00)');
  });

  it('tells parts by their names, and a finish on another day with its date', () => {
    const shop = inventShop();
    const piece = shop.add('Hat rack', scheduleOf([step('sand')]), at('16 09:00'));
    shop.act({ do: 'pick up', targets: [{ piece, part: null }] }, at('16 10:00'));
    shop.act({ do: 'put down' }, at('16 10:20'));
    session(shop, piece, '17 09:00', '17 09:30');
    expect(textOf(shop, piece, at('17 10:00'))).toContain('done 17 Nov 09:30; 2 sessions');
    const doored = shop.add('Side table', scheduleOf([bleach]), at('17 10:00'));
    shop.act({ do: 'name parts', piece: doored, names: ['case', 'doors'] }, at('17 10:00'));
    const [, doors] = shop.piece(doored).parts;
    shop.act({ do: 'first stroke', piece: doored, part: doors?.id ?? null }, at('17 10:05'));
    expect(textOf(shop, doored, at('17 10:10'))).toContain('doors A 10:05; not done');
  });
});
