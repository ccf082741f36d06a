import { expect, test } from 'vitest';
import { hour, minute } from '../../../src/tracker/time/index.ts';
import type { Product } from '../../../src/tracker/trade/index.ts';
import { afternoon, at } from '../support/bench-of.ts';
import { deskOf, type DrivenDesk } from '../support/desk-of.ts';
import { fitsEverywhere } from '../support/fits.ts';

const now = at('24 14:29');
const mixed = { events: ['mixed'], which: 'first' } as const;

/** Invented: four hours of pot life. */
const product = (id: string, name: string): Product => ({
  id,
  name,
  productClass: name.toLowerCase(),
  chemistry: 'two-part',
  statedFor: { tempC: 23, rh: 50 },
  cautions: [],
  windows: [
    {
      id: 'pot',
      kind: 'pot',
      verb: 'wash the gun',
      scope: 'pass',
      begins: mixed,
      stretches: [
        { meaning: 'go', loss: 'costs nothing' },
        {
          from: { kind: 'stamp', stamp: mixed, plus: { ms: 4 * hour } },
          meaning: 'late',
          loss: 'spoils',
          says: 'gelled: cut the gun out',
        },
      ],
      closedBy: { by: 'stamp', stamp: { events: ['washed-out'], which: 'last' } },
    },
  ],
});
const products = [
  product('lacquer', 'Catalysed lacquer'),
  { ...product('clear', 'Clear'), windows: [] },
  product('milk', 'Milk paint'),
];

async function pots(): Promise<DrivenDesk> {
  const driven = deskOf({ now, facts: afternoon().list, products });
  driven.press('l');
  await driven.settled();
  return driven;
}

test('lists what can be mixed, and mixes it; its row is its own and washes it out', async () => {
  const { text, list, desk, port, press } = await pots();
  expect(text()).toContain('pots: wash one out, or mix one');
  expect(list()).toEqual(['1 mix Catalysed lacquer', '2 mix Milk paint']);
  desk.picked('mix lacquer');
  expect(desk.top().is).toBe('bench');
  expect(port.bench.pots).toMatchObject([{ letter: 'A', product: { id: 'lacquer' } }]);
  expect(text()).toContain('pot A mixed, catalysed lacquer');
  expect(text()).toMatch(/^ {2}- {2}pot A, catal\S+ +pot lasts till +18:\d\d/m);
  press('1');
  for (let presses = 0; presses < 12 && !text().includes('[-] pot A'); presses += 1) press('up');
  expect(text()).toContain('[-] pot A, catalysed lacquer.  Space: washed out');
  press(',');
  expect(port.bench.pots[0]?.mixedAt).toBeLessThan(port.now - minute);
  press('space');
  expect(port.bench.pots[0]?.washedAt).not.toBeNull();
});

test('an open pot stands first, and is washed out from the list', async () => {
  const { desk, press, list, pick, settled, text } = await pots();
  desk.picked('mix lacquer');
  press('l');
  await settled();
  expect(list()[0]).toMatch(/^1 wash out pot A, catalysed lacquer: mixed 14:\d\d, pot lasts till/);
  pick(1);
  expect(text()).toContain('pot A, catalysed lacquer, washed out');
});

test('shutting up shop lists open pots', async () => {
  const { desk, press, text } = await pots();
  desk.picked('mix lacquer');
  press('v');
  expect(text()).toMatch(/open {4}pot A, catalysed lacquer: mixed .*pot lasts till 18:\d\d/);
});

test('fits every terminal', async () => {
  const { desk } = await pots();
  fitsEverywhere(({ columns, rows }) => desk.frame(columns, rows), /Esc/);
});
