import { expect, test } from 'vitest';
import { openShop } from './support/shop.ts';

test('a pair is looked up by product or class, with why, what to do instead and the source', async () => {
  const shop = openShop();
  const told = await shop.does('over', 'varnish', 'nitrocellulose-lacquer');
  expect(told.split('\n')[0]).toBe('nitrocellulose lacquer over traditional varnish: no');
  expect(told).toContain('why: its solvent lifts');
  expect(told).toContain('instead: more of the same');
  expect(told).toContain('source: common practice, no source. The label comes first.');
  expect(await shop.does('over', 'oil stain', 'nitrocellulose lacquer')).toContain(
    'only after it is dry, 24 hours at the least',
  );
});

test('a pair as JSON', async () => {
  const pair = await openShop().json('over', 'paste-wax', 'shellac');
  expect(pair).toMatchObject({
    below: 'paste wax',
    above: 'shellac',
    verdict: 'no',
    says: null,
    rows: [{ verdict: 'no', first: null, waitMinutes: null, why: 'nothing but wax holds on wax' }],
  });
});

test('what nobody knows is said to be unknown, with what was meant perhaps', async () => {
  const shop = openShop();
  const told = await shop.does('over', 'shelac', 'unicorn');
  expect(told).toContain('unicorn over shelac: not in the table: try it on a sample board');
  expect(told).toContain('nearest: shellac');
  expect(await shop.json('over', 'shellac', 'unicorn')).toMatchObject({ verdict: null, rows: [] });
});

test('a name that could be several is refused with all of them', async () => {
  const { says } = await openShop().refuses('over', 'two-part', 'shellac');
  expect(says).toContain('"two-part" could be');
  expect(says).toContain('two-part epoxy');
});

test('without a pair come the rows on what lies below, or the whole table', async () => {
  const shop = openShop();
  const onWax = await shop.json('over', 'paste-wax');
  expect(onWax.rows.length).toBe(3);
  const all = await shop.json('over');
  expect(all.rows.length).toBeGreaterThan(50);
  expect(await shop.does('over')).toContain('shellacs over shellacs: yes');
});

test("a schedule of the user's own that puts lacquer over varnish is left out and said", async () => {
  const shop = openShop();
  await shop.does('schedules', 'copy', 'strip-stain-varnish');
  const { readFileSync, writeFileSync } = await import('node:fs');
  const file = `${shop.folder}/schedules/strip-stain-varnish.yaml`;
  const text = readFileSync(file, 'utf8');
  const last = text.lastIndexOf('product: varnish');
  writeFileSync(
    file,
    `${text.slice(0, last)}product: nitrocellulose-lacquer${text.slice(last + 'product: varnish'.length)}`,
  );
  const { code, out } = await shop.run(['schedules', 'check', file]);
  expect(code).not.toBe(0);
  expect(out).toContain('nitrocellulose lacquer over traditional varnish does not go');
  expect(out).toMatch(/line \d+, steps\[varnish-3\]\.product/);
});
