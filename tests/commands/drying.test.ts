import { expect, it } from 'vitest';
import { hour, minute } from '../../src/tracker/time/index.ts';
import { openShop, type Shop } from './support/shop.ts';

const coatStep = 'clear coat 1 of 3, sides first, top last';

/** A piece whose first coat gets its last stroke now. Gives its number. */
async function coated(shop: Shop, number: number): Promise<string> {
  await shop.does('add', `Chest ${number}`, '--schedule', 'bleach-and-clear');
  const piece = String(number);
  await shop.does('pick-up', piece, '--step', coatStep);
  await shop.does('first-stroke', piece);
  await shop.does('done', piece);
  await shop.does('put-down');
  return piece;
}

/** The label says 2 h: found not yet then, and ready half an hour later. */
async function slowCoat(shop: Shop, number: number): Promise<void> {
  const piece = await coated(shop, number);
  shop.later(2 * hour + minute);
  await shop.does('not-yet', piece);
  shop.later(30 * minute);
  await shop.does('ready', piece);
}

/** From the last stroke to the opening of the window that the piece shows, in minutes. */
async function opensAfter(shop: Shop, piece: string): Promise<number> {
  const [window] = (await shop.json('windows', piece)).windows;
  return (Date.parse(window?.opens ?? '') - shop.now()) / minute;
}

const milestoneOf = async (shop: Shop, milestone: string, product = 'waterborne-clear') =>
  (await shop.json('drying', product)).products[0]?.milestones.find(
    (each) => each.milestone === milestone,
  );

it('the next coat opens when the last ones were ready, and the sum says so', async () => {
  const shop = openShop();
  for (let number = 1; number <= 2; number++) await slowCoat(shop, number);
  expect(await opensAfter(shop, await coated(shop, 3))).toBe(120);
  await slowCoat(shop, 4);
  const piece = await coated(shop, 5);
  const told = await milestoneOf(shop, 'scuff');
  expect(told).toMatchObject({ labelMinutes: 120, coats: 3, foundReady: 3, opensBy: 'checks' });
  expect(told?.opensMinutes).toBeGreaterThan(145);
  expect(told?.opensMinutes).toBeLessThan(200);
  expect(await opensAfter(shop, piece)).toBe(told?.opensMinutes);
  expect(await shop.does('windows', piece)).toMatch(
    /\(label 2 h, yours 1\.\d times from 3 coats, no reading, from last stroke /,
  );
  const [first] = (await shop.json('windows', piece)).windows;
  expect(first?.sums[0]?.spans[0]).toMatchObject({
    labelMinutes: 120,
    ownMinutes: told?.opensMinutes,
    ownCoats: 3,
  });
  const text = await shop.does('drying');
  expect(text).toMatch(/scuff {6}label 2 h, yours 2 h \d\d, from 3 coats\n/);
  expect(text).toContain(', 4 times in 5; opens at 2 h ');
  expect(text).toContain('not yet at 2 h 01, ready at 2 h 31\n');
  // The ping goes out at the moved opening.
  const pings = (await shop.json('pings')).toCome.filter(({ piece: its }) => its?.number === 5);
  expect(pings.map(({ at }) => (Date.parse(at) - shop.now()) / minute)).toContain(
    told?.opensMinutes,
  );
  await shop.does('settings', 'learn drying', 'no');
  expect(await opensAfter(shop, piece)).toBe(120);
  expect(await shop.does('drying')).toContain('the setting "learn drying" is no');
  expect((await milestoneOf(shop, 'scuff'))?.opensBy).toBe('label');
});

it('tells what the air of the last reading makes of it, as the next coat then opens', async () => {
  const shop = openShop();
  expect(await shop.does('drying', 'shellac')).not.toContain('in the air now');
  await shop.does('conditions', '15C', '75%');
  const piece = await coated(shop, 1);
  const told = await milestoneOf(shop, 'scuff');
  const times = told?.timesInAirNow ?? 0;
  expect(times).toBeGreaterThan(1.3);
  expect(await opensAfter(shop, piece)).toBeCloseTo(120 * times, 0);
  expect(await shop.does('drying')).toMatch(
    / scuff {6}label 2 h, from the label, not yet from you\n {13}in the air now, 15 C 75 %: label \d h/,
  );
  await shop.does('settings', 'air', 'no');
  expect((await milestoneOf(shop, 'scuff'))?.timesInAirNow).toBeNull();
});

it('tells of products that were not tried, by their label', async () => {
  const shop = openShop();
  expect(await shop.does('drying')).toMatch(/^No coat is on the bench, and none was tried\./);
  expect(await shop.does('drying', 'shellac')).toContain(
    'recoat     label 2 h, from the label, not yet from you\n',
  );
  expect(await milestoneOf(shop, 'scuff', 'shellac')).toEqual({
    milestone: 'scuff',
    labelMinutes: 60,
    yours: null,
    coats: 0,
    foundReady: 0,
    opensMinutes: 60,
    opensBy: 'label',
    timesInAirNow: null,
    keptOut: [],
    lastCoats: [],
  });
  const refused = await shop.refuses('drying', 'shelac');
  expect(refused.says).toMatch(/^Not shown: there is no product that dries "shelac"\./);
});
