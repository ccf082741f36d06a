import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { drawBench } from '../../../src/views/bench/bench-draw.ts';
import { benchStart } from '../../../src/views/bench/bench-state.ts';
import { lineWidth } from '../../../src/views/drawing/index.ts';
import {
  afternoon,
  at,
  Facts,
  ping,
  rowsOf,
  sizes,
  snapshotOf,
  step,
  tense,
  viewOf,
  type Size,
} from '../support/bench-of.ts';

const air = { at: at('24 13:40'), tempC: 15, rh: 65 };
const calm = (size: Size = [80, 24]) => {
  const now = at('24 14:29');
  const view = viewOf(snapshotOf(afternoon().bench(), { readings: [air] }), now, size);
  return drawBench({ ...benchStart(now), selected: 'p1' }, view);
};

describe('the bench, calm', () => {
  it('says at a glance what needs hands next, what is in hand, and draws every window', () => {
    expect(rowsOf(calm()).join('\n')).toBe(`\
14:29  Tue 24 Nov                                15 C  65 %  dew 8 C  read 13:40
next     2 Plant stand: try it, till 18:30
         3 Beech stool: try it from 15:10
in hand  1 Oak settle: sand 120 grit, 27 min of about 36 min
                                                  14:29   15:00     18  24  06
▶[1] Oak settle     in hand since    14:02 27 min │               ┊
     sand 120 grit, 1 of 2; expected 26 to 48 min
  2  Plant stand    try it till      18:30 4 h 01 │███████████████┊█)▒▒▒▒▒▒▒▒▒▒▒
     varnish coat 1; after 18:30 scuff 320 first
  3  Beech stool    drying, try it   15:10 41 min │··········(████┊████)▒▒▒▒▒▒▒▒
     clear coat 2 of 3; open to 23:00
  4  Side table     in clamps till   15:20 51 min │············(──┊─────────────
     glue-up, left rail; nothing lost after
  5  Garden bench   keep off till    08:55    Wed │×××××××××××××××┊×××××××××××(─
     aerosol pass 2; recoating now wrinkles it
  6  Cane rocker    waits for hands               │               ┊
     look over, lead test, 1 of 1; expected 15 to 30 min




oily rags? v   hold 8 Hat rack   curing 7 Walnut tray
[1] Oak settle.  Space: sand 120 grit done.  Enter: put down.  0: take back
1-9 piece  Enter pick up, put down  r ready  n not yet  t trouble  k all keys`);
  });

  it('asks for no tick each second while no figure shows seconds', () => {
    expect(calm().ticking).toBe(false);
  });

  it('puts the bar beside the name and the words below at 40 columns', () => {
    expect(
      rowsOf(calm([40, 20]))
        .slice(4, 9)
        .join('\n'),
    ).toBe(`\
                    14:29 15:00 18 24 12
▶[1] Oak settle     │          ┊
     in hand since         14:02 27 min
  2  Plant stand    │██████████┊█)▒▒▒▒▒▒
     try it till           18:30 4 h 01`);
  });

  it('gives up second lines first, then the axis, and then scrolls', () => {
    expect(rowsOf(calm([80, 14])).some((row) => row.includes('scuff 320 first'))).toBe(false);
    expect(rowsOf(calm([80, 14]))[4]).toContain('15:00');
    expect(rowsOf(calm([80, 13]))[4]).toContain('Oak settle');
    expect(rowsOf(calm([80, 11])).join('\n')).toContain('3 more: down');
  });
});

describe('the bench while something spoils', () => {
  const now = at('12-03 16:41:20');
  const text = '2 Wall shelf: B on, by 16:42. Late: rinse, dry, start over. Gloves, goggles.';
  const loud = ping('c', '12-03 16:41', text, { loud: true, piece: 'p2' });
  const frame = drawBench(
    benchStart(now),
    viewOf(snapshotOf(tense().bench(), { pings: [loud] }), now),
  );

  it('turns two rows over, shows the count-down large, and puts the row first', () => {
    const rows = rowsOf(frame);
    expect(rows.slice(1, 4).join('\n')).toBe(`\
!! 2 Wall shelf: B on, by 16:42                                 ▄▀▀▄ ▄ █  █ ▄▀▀▄
!! Late: rinse, dry, start over. Gloves, goggles.               █  █ ▄ ▀▀▀█ █  █
in hand  nothing                                                 ▀▀       ▀  ▀▀`);
    expect(rows[5]).toContain('2] Wall shelf     B now, till      16:42   0:40');
    expect(frame.lines[1]?.every(({ role }) => role === 'loud')).toBe(true);
    expect(frame.lines[5]?.some(({ role }) => role === 'spoils')).toBe(true);
  });

  it('says what a key does while it calls, and what the next one would', () => {
    expect(rowsOf(frame).at(-2)).toBe(
      'Any key silences and selects 2, no more.  Then Space: 2 B, first stroke on',
    );
  });

  it('asks for a tick each second', () => {
    expect(frame.ticking).toBe(true);
  });
});

describe('whatever is on the bench', () => {
  const name = fc.oneof(
    fc.string({ maxLength: 90, unit: 'grapheme' }),
    fc.constantFrom('長い名前の椅子です', '👩‍🔧 stool', '\u001b[2J\u0007', 'a\tb\nc'),
  );
  const size = fc.constantFrom(...sizes, [33, 11] as const, [79, 15] as const, [200, 60] as const);

  it('no row is wider than the terminal, and no frame higher', () => {
    fc.assert(
      fc.property(fc.array(name, { maxLength: 12 }), size, (names, [columns, rows]) => {
        const facts = new Facts();
        names.forEach((each, index) =>
          facts.piece('24 09:00', index + 1, each, [step('sand', each)]),
        );
        if (names.length > 0) facts.pickUp('24 10:00', 1, 'sand');
        const now = at('24 14:29');
        const frame = drawBench(
          benchStart(now),
          viewOf(snapshotOf(facts.bench()), now, [columns, rows]),
        );
        expect(frame.lines.length).toBeLessThanOrEqual(rows);
        // The bar's column is fixed: every row of a piece is as wide as the terminal, to the cell.
        for (const line of frame.lines.slice(5, 5 + Math.min(names.length, rows - 9))) {
          expect(lineWidth(line)).toBeLessThanOrEqual(columns);
        }
      }),
      { numRuns: 60 },
    );
  });

  it('what spoils can not scroll away', () => {
    const facts = tense();
    for (let number = 7; number <= 30; number += 1) {
      facts.piece('12-01 10:00', number, `Piece ${number}`, [step('sand', 'sand')]);
    }
    const now = at('12-03 16:41:20');
    const view = viewOf(snapshotOf(facts.bench()), now, [80, 24]);
    const rows = rowsOf(drawBench({ ...benchStart(now), selected: 'p30' }, view));
    expect(rows.some((row) => row.includes('2  Wall shelf'))).toBe(true);
    expect(rows.some((row) => row.includes('[30] Piece 30') || row.includes('[30]Piece 30'))).toBe(
      true,
    );
  });
});
