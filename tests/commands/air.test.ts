import { expect, it } from 'vitest';
import { openShop, type Shop } from './support/shop.ts';

const coatAtHand = async (): Promise<Shop> => {
  const shop = openShop();
  await shop.does('add', 'Oak chest', '--schedule', 'bleach-and-clear');
  return shop;
};
const coat = async (shop: Shop): Promise<string> =>
  shop.does('pick-up', '1', '--step', 'clear coat 1 of 3, sides first, top last');

it('warns in the answer before a coat goes on, and blocks nothing', async () => {
  const shop = await coatAtHand();
  await shop.does('conditions', '8C 90%');
  const said = await coat(shop);
  expect(said).toMatch(/^picked up 1 Oak chest, /);
  expect(said).toContain('air: too cold: 8 C, not below 10 C. Warm the shop\n');
  expect(said).toContain('air: too damp: 90 %, not above 85 %\n');
  expect(said).toContain(
    'air: air (no surface measured) 8 C, dew point 6 C: the surface must have 9 C or more\n',
  );
  const { warns } = await shop.json('first-stroke', '1');
  expect(warns).toHaveLength(3);
  expect((await shop.json('note', '1', 'fine')).warns).toEqual([]);
});

it('warns in the units of the shop', async () => {
  const shop = openShop({ locale: 'en-US' });
  await shop.does('add', 'Oak chest', '--schedule', 'bleach-and-clear');
  await shop.does('conditions', '46F 40%');
  expect(await coat(shop)).toContain('air: too cold: 46 F, not below 50 F. Warm the shop\n');
});

it('says that there is no reading, and that a reading is old', async () => {
  const shop = await coatAtHand();
  expect(await coat(shop)).toContain('air: no reading of the air yet');
  await shop.does('put-down');
  await shop.does('conditions', '20C 50%');
  shop.minutesLater(300);
  expect(await coat(shop)).toContain('air: the reading is 5 h old: read the air again\n');
});

it('a piece that came in from the cold is warned of until its surface was measured', async () => {
  const shop = await coatAtHand();
  await shop.does('conditions', '20C 50%');
  expect(await shop.does('carried-in', '1')).toMatch(/^1 Oak chest carried in from the cold\n/);
  expect(await coat(shop)).toMatch(
    /air: carried in from the cold 14:29: its surface must have 12 C or more\. Let it warm, or measure it\n/,
  );
  await shop.does('put-down');
  shop.minutesLater(1);
  await shop.does('conditions', '20C', '50%', 'surface', '17C');
  expect(await coat(shop)).not.toContain('air:');
  expect((await shop.refuses('carried-in', '9')).says).toMatch(/^Not noted: /);
  expect((await shop.json('conditions')).readings.at(-1)?.surfaceC).toBe(17);
});

it('the air moves windows, the sum is told, and a setting puts an end to it', async () => {
  const shop = await coatAtHand();
  await shop.does('conditions', '15C 65%');
  await coat(shop);
  await shop.does('first-stroke', '1');
  shop.minutesLater(20);
  await shop.does('done', '1');
  const text = await shop.does('windows', '1');
  expect(text).toContain('(label 2 h x 1.9 for 15 C 65 %, from last stroke 14:49)');
  const recoat = (await shop.json('windows', '1')).windows.find(({ sums }) => sums.length > 0);
  const [opening] = recoat?.sums ?? [];
  expect(opening?.spans[0]).toMatchObject({ labelMinutes: 120, readings: 1, nightLowFrom: null });
  expect(opening?.spans[0]?.minutes).toBeGreaterThan(220);
  const bench = await shop.json('bench');
  expect(bench.air).toMatchObject({ tempC: 15, rh: 65, dewPointC: 8.5 });
  expect(bench.air?.coatsTake?.most).toBeCloseTo(1.86, 1);
  await shop.does('settings', 'air', 'no');
  expect(await shop.does('windows', '1')).toContain('(label 2 h, from last stroke 14:49)');
  expect((await shop.json('bench')).air?.coatsTake).toBeNull();
});

it('the night low is a setting, and counts when no reading came for hours', async () => {
  const shop = await coatAtHand();
  await shop.does('settings', 'night-low', '5C');
  await shop.does('conditions', '20C 50%');
  await coat(shop);
  await shop.does('first-stroke', '1');
  shop.minutesLater(3 * 60);
  await shop.does('done', '1');
  expect(await shop.does('windows', '1')).toContain(
    'night low 5 C counted day and night from 18:29 till the next reading',
  );
  const { windows } = await shop.json('windows', '1');
  const spans = windows.flatMap(({ sums }) => sums.flatMap((sum) => sum.spans));
  expect(spans.map(({ nightLowFrom }) => nightLowFrom)).toContain('2026-11-24T18:29:00.000-05:00');
  shop.minutesLater(2 * 60);
  expect(await shop.does('windows', '1')).toContain(
    'reading 5 h old, night low 5 C counted day and night till the next',
  );
});

it('a bare figure that could be either is refused with both spellings', async () => {
  const shop = openShop({ locale: 'en-US' });
  expect(await shop.refuses('conditions', '20 55')).toEqual({
    code: 64,
    says: 'Not noted: 20 could be 20 F or 20 C: write 20F 55% or 20C 55%.',
  });
});

it('a script may read every minute', async () => {
  const shop = openShop();
  for (let minute = 0; minute < 40; minute += 1) {
    await shop.does('conditions', `${minute % 2 === 0 ? 20 : 20.3}C 50%`);
    shop.minutesLater(1);
  }
  const { readings } = await shop.json('conditions', '--all');
  expect(readings.length).toBeLessThan(6);
  expect(readings.at(-1)?.readAt).toBe('2026-11-24T15:08:00.000-05:00');
});
