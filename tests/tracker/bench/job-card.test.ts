import { describe, expect, it } from 'vitest';
import {
  jobCard,
  type CheckRow,
  type HoldRow,
  type JobCard,
  type StepRow,
} from '../../../src/tracker/bench/index.ts';
import { hour, minute } from '../../../src/tracker/time/index.ts';
import type { Product } from '../../../src/tracker/trade/index.ts';
import type { WindowRule } from '../../../src/tracker/windows/index.ts';
import {
  inventShop,
  monday,
  scheduleOf,
  sense,
  step,
  type InventedShop,
} from '../estimate/invented-shop.ts';

const at = (minutes: number): number => monday + minutes * minute;
const air = { tempC: 16, rh: 60, readAt: at(-30) };

/** B from 10 to 20 min after A; figures of no particular product. */
const bOn: WindowRule = {
  id: 'b-on',
  kind: 'chemical',
  verb: 'B on',
  scope: 'step',
  begins: { events: ['first-stroke'], agent: 'A', which: 'first' },
  stretches: [
    { meaning: 'wait', loss: 'costs nothing' },
    {
      meaning: 'go',
      loss: 'costs nothing',
      from: {
        kind: 'stamp',
        stamp: { events: ['first-stroke'], agent: 'A', which: 'first' },
        plus: { ms: 10 * minute },
      },
    },
    {
      meaning: 'late',
      loss: 'spoils',
      says: 'A dry: rinse, dry, start over',
      from: {
        kind: 'stamp',
        stamp: { events: ['first-stroke'], agent: 'A', which: 'first' },
        plus: { ms: 20 * minute },
      },
    },
  ],
  closedBy: { by: 'stamp', stamp: { events: ['first-stroke'], agent: 'B', which: 'first' } },
};

const clear: Product = {
  id: 'clear',
  name: 'Waterborne clear',
  productClass: 'waterborne clear',
  chemistry: 'waterborne',
  statedFor: { tempC: 23, rh: 50 },
  cautions: [],
  windows: [
    {
      id: 'recoat',
      kind: 'coat',
      verb: 'recoat',
      milestone: 'recoat',
      scope: 'step',
      begins: { events: ['last-stroke'], which: 'last' },
      stretches: [
        { meaning: 'wait', loss: 'costs nothing' },
        {
          meaning: 'go',
          loss: 'costs nothing',
          from: {
            kind: 'stamp',
            stamp: { events: ['last-stroke'], which: 'last' },
            plus: { ms: 2 * hour },
          },
        },
      ],
      closedBy: { by: 'needing step' },
      notYetAdds: 30 * minute,
    },
  ],
};

const schedule = scheduleOf(
  [
    step('look', { name: 'look over' }),
    step('bleach', {
      name: 'bleach A, then B',
      windows: [bOn],
      stamps: [
        { event: 'first-stroke', agent: 'A', says: 'A on' },
        { event: 'first-stroke', agent: 'B', says: 'B on' },
      ],
    }),
    step('coat-1', {
      name: 'clear coat 1',
      product: 'clear',
      stamps: [{ event: 'first-stroke', says: 'first stroke on' }],
    }),
    step('coat-2', {
      name: 'clear coat 2',
      product: 'clear',
      needs: ['recoat'],
      stamps: [{ event: 'first-stroke', says: 'first stroke on' }],
    }),
  ],
  { clear },
);

const cardOf = (shop: InventedShop, piece: string, now: number): JobCard =>
  jobCard(shop.bench(), shop.piece(piece), at(now), sense);

const stepRow = (card: JobCard, id: string | null): StepRow => {
  const row = card.rows.find((each) => each.row === 'step' && each.step === id);
  if (row?.row !== 'step') throw new Error(`no row for ${id}`);
  return row;
};

/** A bleached piece with A on at 20 min, B `later` min after it. */
function bleached(later: number): { readonly shop: InventedShop; readonly stool: string } {
  const shop = inventShop(air);
  const stool = shop.add('Beech stool', schedule);
  shop.work(stool, 0, 18);
  shop.act({ do: 'next stamp', piece: stool, part: null }, at(20));
  shop.act({ do: 'next stamp', piece: stool, part: null }, at(20 + later));
  shop.act({ do: 'done', piece: stool, part: null }, at(24 + later));
  shop.act({ do: 'put down', piece: stool }, at(26 + later));
  return { shop, stool };
}

describe('job card', () => {
  it('tells each step with its minutes, stamps and the conditions kept with them', () => {
    const { shop, stool } = bleached(11);
    const card = cardOf(shop, stool, 60);
    const bleach = stepRow(card, 'bleach');
    expect(bleach).toMatchObject({ at: at(20), minutes: 17, sessions: 1, done: true, air });
    expect(bleach.stamps.map(({ event, agent, at: when }) => [event, agent, when])).toEqual([
      ['first-stroke', 'A', at(20)],
      ['first-stroke', 'B', at(31)],
      ['done', null, at(35)],
    ]);
    expect(card.minutes).toBe(18 + 17);
    expect(card.sessions).toBe(2);
    expect(card.rows.map(({ at: when }) => when)).toEqual(
      card.rows.map(({ at: when }) => when).toSorted((a, b) => a - b),
    );
  });

  it('tells how a window was met: in time, early or late, and what lateness called for', () => {
    const outcomeAfter = (later: number) => {
      const { shop, stool } = bleached(later);
      return stepRow(cardOf(shop, stool, 200), 'bleach').outcomes[0];
    };
    expect(outcomeAfter(11)).toMatchObject({
      verb: 'B on',
      outcome: 'in time',
      after: 11 * minute,
    });
    expect(outcomeAfter(5)).toMatchObject({ outcome: 'early', opened: at(30) });
    expect(outcomeAfter(25)).toMatchObject({
      outcome: 'late',
      loss: 'spoils',
      says: 'A dry: rinse, dry, start over',
    });
  });

  it('tells checks with the time since the last stroke, and from when the next step may be tried', () => {
    const { shop, stool } = bleached(11);
    shop.act({ do: 'first stroke', piece: stool, part: null }, at(60));
    shop.act({ do: 'done', piece: stool, part: null }, at(75));
    shop.act({ do: 'put down', piece: stool }, at(80));
    const card = cardOf(shop, stool, 90);
    expect(stepRow(card, 'coat-1').product).toBe('Waterborne clear');
    expect(card.toDo).toEqual([{ name: 'clear coat 2', notBefore: at(75 + 120) }]);
    shop.act({ do: 'check', piece: stool, part: null, finding: 'not yet', shown: 'gums' }, at(180));
    const check = cardOf(shop, stool, 190).rows.find((row): row is CheckRow => row.row === 'check');
    expect(check).toMatchObject({
      finding: 'not yet',
      shown: 'gums',
      step: 'clear coat 1',
      afterStroke: 105 * minute,
      air,
    });
  });

  it('keeps what was first recorded beside a corrected session, and when it was corrected', () => {
    const { shop, stool } = bleached(11);
    const [first] = shop.bench().sessions;
    const id = first?.id ?? '';
    shop.act({ do: 'correct session', session: id, end: at(10) }, at(300));
    expect(stepRow(cardOf(shop, stool, 400), 'look')).toMatchObject({
      minutes: 10,
      corrections: [{ change: 'changed', was: 18, minutes: 10, told: at(300) }],
    });
    shop.act({ do: 'correct session', session: id, end: at(18) }, at(310));
    expect(stepRow(cardOf(shop, stool, 400), 'look').corrections).toEqual([]);
    shop.act({ do: 'correct session', session: id, dropped: true }, at(320));
    expect(stepRow(cardOf(shop, stool, 400), 'look')).toMatchObject({
      minutes: null,
      corrections: [{ change: 'dropped', was: 18, minutes: 0 }],
    });
  });

  it('tells a correction of the end though the session was corrected while it ran', () => {
    const { shop, stool } = bleached(11);
    shop.act({ do: 'pick up', targets: [{ piece: stool, part: null, step: 'look' }] }, at(300));
    const id = shop.bench().sessions.at(-1)?.id ?? '';
    const corrections = () => stepRow(cardOf(shop, stool, 400), 'look').corrections;
    shop.act({ do: 'correct session', session: id, start: at(300) }, at(310));
    shop.act({ do: 'put down', piece: stool }, at(330));
    expect(corrections()).toEqual([]);
    shop.act({ do: 'move stamp', piece: stool, earlier: true }, at(331));
    expect(corrections()).toEqual([]);
    shop.act({ do: 'correct session', session: id, end: at(320) }, at(340));
    expect(corrections()).toMatchObject([{ change: 'changed', was: 29, minutes: 20 }]);
    // A key that moves a corrected end takes nothing of what was first recorded.
    shop.act({ do: 'move stamp', piece: stool, earlier: true }, at(341));
    expect(corrections()).toMatchObject([{ change: 'changed', was: 29, minutes: 19 }]);
  });

  it('tells on both cards that a session was moved to another piece', () => {
    const { shop, stool } = bleached(11);
    const rack = shop.add('Book rack', schedule, at(100));
    const id = shop.bench().sessions[0]?.id ?? '';
    const targets = [{ piece: rack, part: null, step: 'look' }];
    shop.act({ do: 'correct session', session: id, targets }, at(110));
    expect(stepRow(cardOf(shop, stool, 400), 'look').corrections).toMatchObject([
      { change: 'moved away', other: 'Book rack', was: 18 },
    ]);
    expect(stepRow(cardOf(shop, rack, 400), 'look')).toMatchObject({
      minutes: 18,
      corrections: [{ change: 'moved here', other: 'Beech stool' }],
    });
    expect(cardOf(shop, rack, 400).minutes).toBe(18);
  });

  it('shows where a moved stamp was first recorded', () => {
    const { shop, stool } = bleached(11);
    shop.act({ do: 'first stroke', piece: stool, part: null }, at(60));
    shop.act({ do: 'move stamp', piece: stool, earlier: true }, at(61));
    const [stroke] = stepRow(cardOf(shop, stool, 70), 'coat-1').stamps;
    expect(stroke).toMatchObject({ at: at(55), movedFrom: at(60) });
  });

  it('tells notes, holds and their lifting, changes of the plan, timers, comings and goings', () => {
    const { shop, stool } = bleached(11);
    shop.act(
      { do: 'write note', piece: stool, step: 'bleach', text: 'left foot: old dowel' },
      at(40),
    );
    shop.act({ do: 'place hold', piece: stool, reason: 'hinge', askAgain: '2026-11-20' }, at(41));
    shop.act({ do: 'place hold', piece: stool, reason: 'plates', askAgain: null }, at(42));
    shop.act({ do: 'lift hold', piece: stool }, at(50));
    shop.act({ do: 'repeat step', piece: stool, step: 'bleach' }, at(51));
    shop.act({ do: 'skip step', piece: stool, step: 'coat-2', skipped: true }, at(52));
    shop.act({ do: 'start timer', piece: stool, label: 'clamps', ms: 35 * minute }, at(53));
    shop.act({ do: 'take off bench', piece: stool }, at(54));
    const card = cardOf(shop, stool, 60);
    const holds = card.rows.filter((row): row is HoldRow => row.row === 'hold');
    expect(holds).toMatchObject([
      { reason: 'hinge', askAgain: '2026-11-20', liftedAt: at(42) },
      { reason: 'plates', liftedAt: at(50) },
    ]);
    expect(card.rows).toContainEqual({
      row: 'note',
      at: at(40),
      step: 'bleach A, then B',
      text: 'left foot: old dowel',
    });
    expect(
      card.rows.flatMap((row) => (row.row === 'plan' ? [[row.change, row.name]] : [])),
    ).toEqual([
      ['put in', 'bleach A, then B, again'],
      ['skipped', 'clear coat 2'],
      ['left the bench', null],
    ]);
    expect(card.rows.some((row) => row.row === 'timer' && row.timer.label === 'clamps')).toBe(true);
    expect(card.toDo.map(({ name }) => name)).toEqual(['bleach A, then B, again', 'clear coat 1']);
  });

  it('leaves out what was taken back', () => {
    const { shop, stool } = bleached(11);
    const before = cardOf(shop, stool, 500);
    shop.act({ do: 'place hold', piece: stool, reason: 'hinge', askAgain: null }, at(60));
    shop.act({ do: 'take back' }, at(61));
    expect(cardOf(shop, stool, 500).rows).toEqual(before.rows);
  });

  it('tells minutes that belong to no step', () => {
    const { shop, stool } = bleached(11);
    shop.act({ do: 'pick up', targets: [{ piece: stool, part: null, step: null }] }, at(100));
    shop.act({ do: 'put down' }, at(107));
    expect(stepRow(cardOf(shop, stool, 200), null)).toMatchObject({
      name: 'other work',
      minutes: 7,
      done: false,
    });
  });
});
