import { readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, it } from 'vitest';
import { openShop, type Shop } from './support/shop.ts';

/** The file that copying a class writes. */
async function copyOf(shop: Shop, id: string, newId: string): Promise<string> {
  const file = join(shop.folder, 'schedules', `${newId}.yaml`);
  expect(await shop.does('product', 'copy', id, newId)).toContain(`copied to ${file}`);
  return file;
}

it('a can of one’s own is copied from a class, checked, put to use, and told of when it is old', async () => {
  const shop = openShop({ now: '2026-11-24T08:00:00-05:00' });
  const file = await copyOf(shop, 'varnish', 'my-varnish');
  expect(await shop.does('product', 'check', file)).toContain('nothing wrong');
  const text = readFileSync(file, 'utf8');
  writeFileSync(
    file,
    text
      .replace(/ {4}name: .*/, '    name: My varnish\n    batch: 7 C\n    shelf life: 2026-10-31')
      .replace('opens: 24 h', 'opens: 20 h'),
  );
  expect(await shop.does('product', 'check', file)).toContain('nothing wrong');
  const { products } = await shop.json('product');
  expect(products.find(({ id }) => id === 'my-varnish')).toMatchObject({
    name: 'My varnish',
    class: 'traditional varnish',
    batch: '7 C',
    keepsTill: '2026-10-31',
  });
  await shop.does('add', 'Chest', '--schedule', 'strip-stain-varnish');
  const told = await shop.does('use', '1', 'varnish-1', 'my-varnish');
  expect(told).toContain('! My varnish, batch 7 C, is past its shelf life since 2026-10-31');
  expect(told).toContain('My varnish for varnish coat 1 of 3');
  const { warns } = await shop.json('pick-up', '1', '--step', 'varnish-1');
  expect(warns[0]).toContain('batch 7 C, is past its shelf life');
});

it('copying refuses what is no id, no product, or there already', async () => {
  const shop = openShop();
  expect(await shop.refuses('product', 'copy', 'varnish', 'My Varnish')).toMatchObject({
    code: 64,
    says: expect.stringContaining('Not copied: "My Varnish" is no id.'),
  });
  expect(await shop.refuses('product', 'copy', 'varnisch', 'mine')).toMatchObject({ code: 2 });
  await shop.does('product', 'copy', 'varnish', 'mine');
  expect(await shop.refuses('product', 'copy', 'varnish', 'mine')).toMatchObject({
    code: 1,
    says: expect.stringContaining('is there already'),
  });
  expect(await shop.refuses('product', 'copy', 'mine', 'mine-2')).toMatchObject({
    says: expect.stringContaining('in a file of your own already'),
  });
});

it.each([
  ['shelf life: June', 'a day, such as 2027-06-30'],
  ['opened on: 2026-02-30', 'a day, such as 2027-06-30'],
  ['once opened: long', 'how long it keeps once it was opened, such as 180 d'],
])('%s is refused with file, line and field', async (row, expected) => {
  const shop = openShop();
  const file = await copyOf(shop, 'shellac', 'my-shellac');
  writeFileSync(file, readFileSync(file, 'utf8').replace(/( {4}name: .*)/, `$1\n    ${row}`));
  const { code, out } = await shop.run(['product', 'check', file]);
  expect(code).toBe(1);
  expect(out).toContain('my-shellac.yaml');
  expect(out).toContain(row.split(':')[0]);
  expect(out).toContain(expected);
});

it('a label that closes before it opens, and a gap without an end, are refused with line and field', async () => {
  const shop = openShop();
  const file = await copyOf(shop, 'varnish', 'my-varnish');
  const text = readFileSync(file, 'utf8');
  writeFileSync(file, text.replace('closes: 48 h', 'closes: 2 h'));
  const early = await shop.run(['product', 'check', file]);
  expect(early.out).toMatch(
    /my-varnish\.yaml, line \d+, products\.my-varnish\.coat\.recoat\.closes: /,
  );
  expect(early.out).toContain('is not after its opening');
  writeFileSync(
    file,
    text.replace(/closes: 48 h\n( +)then: .*/, 'keep off: {from: 30 h, because: it wrinkles}'),
  );
  const endless = await shop.run(['product', 'check', file]);
  expect(endless.code).toBe(1);
  expect(endless.out).toContain('until');
});

it('a product that is deleted or renamed leaves a running window as it is', async () => {
  const shop = openShop({ now: '2026-11-24T08:00:00-05:00' });
  const file = await copyOf(shop, 'varnish', 'my-varnish');
  await shop.does('add', 'Chest', '--schedule', 'strip-stain-varnish');
  await shop.does('use', '1', 'varnish-1', 'my-varnish');
  const { steps } = await shop.json('steps', '1');
  for (const { id, leftOut } of steps) {
    if (id === 'varnish-1') break;
    if (leftOut === null) await shop.does('skip-step', '1', id);
  }
  await shop.does('first-stroke', '1');
  await shop.does('done', '1');
  const before = (await shop.json('bench')).rows[0]?.windows;
  expect(before?.length).toBeGreaterThan(0);
  writeFileSync(file, readFileSync(file, 'utf8').replaceAll('my-varnish', 'other-varnish'));
  expect((await shop.json('bench')).rows[0]?.windows).toEqual(before);
  expect(await shop.refuses('use', '1', 'varnish-2', 'my-varnish')).toMatchObject({
    code: 2,
    says: expect.stringContaining('there is no product "my-varnish"'),
  });
});
