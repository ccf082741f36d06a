import { describe, expect, it } from 'vitest';
import { hoursOfFinished } from '../../../src/tracker/estimate/index.ts';
import {
  bySchedule,
  costliest,
  overTime,
  pieceOutcomes,
  whereHoursWent,
} from '../../../src/tracker/review/index.ts';
import { day, hour, minute } from '../../../src/tracker/time/index.ts';
import { inventShop, monday, scheduleOf, step } from '../estimate/invented-shop.ts';

const plain = scheduleOf([
  step('strip', { stepClass: 'strip', minutes: { typical: 60, low: 40, high: 90 } }),
  step('coat', { stepClass: 'coat, brushed', minutes: { typical: 30, low: 20, high: 45 } }),
]);
const other = { ...plain, id: 'other', name: 'Other schedule' };
const monthOf = (at: number): string => new Date(at).toISOString().slice(0, 7);

/** Pieces that came in one a day; each stripped and coated for so many minutes, two hours apart, and taken away at six. */
function worked(minutes: readonly (readonly [strip: number, coat: number])[], schedule = plain) {
  const shop = inventShop();
  for (const [index, [strip, coat]] of minutes.entries()) {
    const at = (minutesOn: number) => monday + index * day + minutesOn * minute;
    const id = shop.add(`Piece ${index + 1}`, index % 2 === 0 ? schedule : other, at(0));
    shop.act({ do: 'pick up', targets: [{ piece: id, part: null }] }, at(0));
    shop.act({ do: 'done', piece: id, part: null }, at(strip));
    shop.act({ do: 'put down', piece: id }, at(strip));
    shop.act({ do: 'pick up', targets: [{ piece: id, part: null }] }, at(240));
    shop.act({ do: 'done', piece: id, part: null }, at(240 + coat));
    shop.act({ do: 'put down', piece: id }, at(240 + coat));
    shop.act({ do: 'take off bench', piece: id }, at(540));
  }
  return hoursOfFinished([shop.bench()], monday + 400 * day);
}

describe('reviewing finished pieces', () => {
  it('leans by finishing schedule, those with most pieces first', () => {
    const leans = bySchedule(
      worked([
        [90, 45],
        [60, 30],
        [90, 45],
      ]),
    );
    expect(leans.map(({ name, pieces, ratio }) => [name, pieces, ratio])).toEqual([
      ['Invented schedule', 2, 1.5],
      ['Other schedule', 1, 1],
    ]);
  });

  it('tells months apart, the newest first, the last five pieces, and a drift', () => {
    const rising = Array.from({ length: 16 }, (_, i) => [60 + 4 * i, 30 + 2 * i] as const);
    const time = overTime(worked(rising), monthOf);
    expect(time.months.map(({ name, pieces }) => [name, pieces])).toEqual([
      ['2026-12', 1],
      ['2026-11', 15],
    ]);
    expect(time.last?.ratio).toBeCloseTo((60 + 4 * 13) / 60, 9);
    expect(time.trend?.direction).toBe('rising');
    expect(overTime(worked(rising.slice(0, 5)), monthOf)).toMatchObject({
      last: null,
      trend: null,
    });
  });

  it('holds each piece against the range its steps were claimed to take together', () => {
    const { pieces, held } = pieceOutcomes(
      worked([
        [60, 30],
        [200, 30],
        [20, 10],
      ]),
    );
    expect(pieces.map(({ piece, minutes, verdict }) => [piece.name, minutes, verdict])).toEqual([
      ['Piece 3', 30, 'under'],
      ['Piece 2', 230, 'over'],
      ['Piece 1', 90, 'inside'],
    ]);
    expect(held).toMatchObject({ held: 1, of: 3 });
    expect(held.claimed).toBe(0.8);
  });

  it('accounts for the time from coming in to leaving', () => {
    const went = whereHoursWent(
      worked([
        [60, 30],
        [90, 30],
      ]),
    );
    expect(went).toMatchObject({ pieces: 2, working: 210, setup: 0, other: 0 });
    expect(went.waiting).toBe((2 * 9 * hour) / minute - 210);
  });

  it('names the classes that cost most, and the piece that most of it came from', () => {
    const found = costliest(
      worked([
        [200, 40],
        [70, 40],
        [50, 30],
      ]),
    );
    expect(
      found.map(({ stepClass, over, pieces, mostly }) => [
        stepClass,
        over,
        pieces,
        mostly?.name ?? null,
      ]),
    ).toEqual([
      ['strip', 140, 3, 'Piece 1'],
      ['coat, brushed', 20, 3, null],
    ]);
    expect(costliest(worked([[60, 30]]))).toEqual([]);
  });
});
