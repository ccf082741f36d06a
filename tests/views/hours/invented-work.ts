import { minute, type Instant } from '../../../src/tracker/time/index.ts';
import type { Product, Step, StepClass } from '../../../src/tracker/trade/index.ts';
import {
  inventShop,
  scheduleOf,
  step,
  type InventedShop,
} from '../../tracker/estimate/invented-shop.ts';
import { at } from '../support/bench-of.ts';

/** Minutes: common practice, no source. */
const work = (
  id: string,
  name: string,
  stepClass: StepClass,
  [low, typical, high]: readonly [number, number, number],
  more: Partial<Step> = {},
): Step => step(id, { name, stepClass, minutes: { typical, low, high }, driver: 'area', ...more });

const stroke = [{ event: 'first-stroke', says: 'first stroke on' }] as const;

const clear: Product = {
  id: 'clear',
  name: 'Waterborne clear',
  productClass: 'waterborne clear',
  chemistry: 'waterborne',
  statedFor: { tempC: 23, rh: 50 },
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
            plus: { ms: 240 * minute },
          },
        },
      ],
      closedBy: { by: 'needing step' },
      notYetAdds: 30 * minute,
    },
  ],
  cautions: [],
};

export const bleachAndClear = scheduleOf(
  [
    work('look', 'look over, lead test', 'look over', [10, 20, 40], { driver: 'fixed' }),
    work('strip', 'strip, test scrape', 'strip', [50, 90, 200], {
      setupMinutes: 25,
      stamps: stroke,
    }),
    work('sand-100', 'sand 100', 'sand bare, first grit', [25, 45, 90], { setupMinutes: 15 }),
    work('sand-120', 'sand 120', 'sand bare, next grit', [18, 28, 50], { setupMinutes: 15 }),
    work('sand-150', 'sand 150', 'sand bare, next grit', [18, 28, 50], { setupMinutes: 15 }),
    work('rinse', 'vinegar, then clear water twice', 'rinse, neutralise', [15, 20, 35]),
    work('coat-1', 'clear coat 1', 'coat, brushed', [20, 30, 50], {
      setupMinutes: 15,
      product: 'clear',
      stamps: stroke,
    }),
    work('scuff', 'scuff 320', 'scuff', [10, 15, 30], { setupMinutes: 8, needs: ['recoat'] }),
    work('coat-2', 'clear coat 2', 'coat, brushed', [20, 30, 50], {
      setupMinutes: 15,
      product: 'clear',
      stamps: stroke,
    }),
    work('wrap', 'refit, wrap', 'refit, wrap', [20, 35, 60], { driver: 'fittings' }),
  ],
  { clear },
);

/** Works the current step of a piece from one time to another, given as in `17 11:46`. */
export function session(
  shop: InventedShop,
  piece: string,
  from: string,
  to: string,
  done = true,
): void {
  const end: Instant = at(to);
  shop.act({ do: 'pick up', targets: [{ piece, part: null }] }, at(from));
  if (done) shop.act({ do: 'done', piece, part: null }, end);
  shop.act({ do: 'put down', piece }, end);
}

export type Invented = {
  readonly shop: InventedShop;
  readonly stool: string;
  readonly rack: string;
  readonly bench: string;
};

/** A stool in work, with a session left running over lunch; a rack waiting; and pieces that have left, one of them far off. */
export function inventedWork(name = 'Beech stool'): Invented {
  const shop = inventShop({ tempC: 16, rh: 60, readAt: at('16 08:00') });
  let bench = '';
  for (const [index, [past, strip]] of (
    [
      ['Hall bench', 160],
      ['Music stand', 60],
      ['Hat rack', 70],
      ['Side table', 110],
    ] as const
  ).entries()) {
    const day = String(index + 2).padStart(2, '0');
    const id = shop.add(past, bleachAndClear, at(`${day} 08:00`));
    if (past === 'Hall bench') bench = id;
    session(shop, id, `${day} 09:00`, `${day} 09:20`);
    const end = new Date(at(`${day} 10:00`) + strip * minute).toISOString().slice(11, 16);
    shop.act({ do: 'first stroke', piece: id, part: null }, at(`${day} 10:00`));
    shop.act({ do: 'done', piece: id, part: null }, at(`${day} ${end}`));
    shop.act({ do: 'put down', piece: id }, at(`${day} ${end}`));
    session(shop, id, `${day} 14:00`, `${day} 14:50`);
    if (past === 'Hall bench')
      shop.act(
        { do: 'write note', piece: id, step: 'strip', text: 'two layers of paint' },
        at(`${day} 15:00`),
      );
    shop.act({ do: 'take off bench', piece: id }, at(`${day} 16:00`));
  }
  const stool = shop.add(name, bleachAndClear, at('16 08:30'));
  shop.act(
    { do: 'describe piece', piece: stool, changes: { areaM2: 1.2, wood: 'hard' } },
    at('16 08:31'),
  );
  const rack = shop.add('Book rack', bleachAndClear, at('16 08:40'));
  session(shop, stool, '16 09:10', '16 09:28');
  shop.act({ do: 'first stroke', piece: stool, part: null }, at('16 09:47'));
  shop.act({ do: 'done', piece: stool, part: null }, at('16 10:51'));
  shop.act({ do: 'put down', piece: stool }, at('16 11:00'));
  session(shop, stool, '17 09:00', '17 09:45');
  // Nobody put it down when lunch came.
  session(shop, stool, '17 10:20', '17 13:05');
  session(shop, stool, '17 13:10', '17 13:31');
  return { shop, stool, rack, bench };
}
