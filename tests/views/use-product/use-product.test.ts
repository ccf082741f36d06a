import { expect, test } from 'vitest';
import type { Product } from '../../../src/tracker/trade/index.ts';
import { afternoon, at } from '../support/bench-of.ts';
import { deskOf } from '../support/desk-of.ts';
import { fitsEverywhere } from '../support/fits.ts';

const own: Product = {
  id: 'my-clear',
  name: 'My clear',
  productClass: 'waterborne polyurethane',
  chemistry: 'waterborne',
  statedFor: { tempC: 21, rh: 50 },
  windows: [],
  cautions: [],
  can: { batch: '7 C', keepsTill: '2026-01-01' },
};
const { can: _, ...generic } = { ...own, id: 'clear', name: 'Clear' };

async function choosing() {
  const driven = deskOf({ now: at('24 14:29'), facts: afternoon().list, products: [generic, own] });
  driven.press('2', 'p', 'p');
  await driven.settled();
  return driven;
}

test('lists one’s own cans first, and says loudly what is wrong with the one that is chosen', async () => {
  const { desk, list, pick, press, text, port } = await choosing();
  expect(desk.top().is).toBe('use product');
  expect(text()).toMatch(/^product for .* on 2 Plant stand/);
  expect(list()).toEqual(['1 My clear, batch 7 C', '2 Clear']);
  pick(1);
  expect(desk.top().is).toBe('piece');
  expect(text()).toContain('My clear, batch 7 C, is past its shelf life since 2026-01-01');
  expect(port.piece('p2').products['my-clear']?.can?.batch).toBe('7 C');
  press('escape');
  expect(desk.top().is).toBe('bench');
});

test('tells two of one name apart, and says which files were left out', async () => {
  const problem = '/shop/my-oil.yaml, line 3: "id" is missing.';
  const copy: Product = { ...generic, id: 'my-copy' };
  const driven = deskOf({
    now: at('24 14:29'),
    facts: afternoon().list,
    products: [generic, copy, own],
    scheduleProblems: [problem],
  });
  driven.press('2', 'p', 'p');
  await driven.settled();
  expect(driven.list()).toEqual(['1 My clear, batch 7 C', '2 Clear, clear', '3 Clear, my-copy']);
  expect(driven.text()).toContain(`Left out: ${problem}`);
});

test('fits every terminal', async () => {
  const { desk } = await choosing();
  fitsEverywhere(({ columns, rows }) => desk.frame(columns, rows), /Esc/);
});
