import stringWidth from 'string-width';
import { describe, expect, it } from 'vitest';
import { openShop, type Shop } from './support/shop.ts';

/** Pieces with their first two steps done and timed, the first one slow, and gone. */
async function finished(pieces: number, columns: number | null = null): Promise<Shop> {
  const shop = openShop({ columns });
  for (let piece = 1; piece <= pieces; piece += 1) {
    await shop.does('add', `Chest ${piece}`, '--schedule', 'paint-and-wax');
    for (const minutes of [piece === 1 ? 95 : 30, 12]) {
      await shop.does('pick-up', `Chest ${piece}`);
      shop.minutesLater(minutes);
      await shop.does('done', `Chest ${piece}`);
      await shop.does('put-down');
    }
    if (piece === 1) await shop.does('note', '1', 'two drawers stuck', '--step', '1');
    await shop.does('off-bench', `Chest ${piece}`);
    shop.minutesLater(24 * 60);
  }
  return shop;
}

describe('hours over finished pieces, as a command', () => {
  it('tells as text what the screen has: the days, and the steps furthest off', async () => {
    const text = await (await finished(3)).does('hours');
    expect(text).toMatch(/^hours: 3 finished pieces, \d+ \w{3} to \d+ \w{3}$/m);
    expect(text).toMatch(/^furthest off +Chest 1 .* est +\d+ took +95 +two drawers stuck$/m);
  });

  it('fits a narrow terminal, and is the same in a wide one as in a file', async () => {
    const [piped, wide, narrow] = await Promise.all(
      [null, 200, 40].map(async (columns) => {
        const shop = await finished(2, columns);
        await shop.does('add', 'Next chest', '--schedule', 'paint-and-wax');
        return [
          await shop.does('hours'),
          await shop.does('hours', '--back-test'),
          await shop.does('hours', 'Next chest'),
        ].join('\n');
      }),
    );
    expect(wide).toBe(piped);
    for (const line of narrow?.split('\n') ?? []) expect(stringWidth(line)).toBeLessThanOrEqual(40);
    expect(narrow).toMatch(/^Chest 1, .* took 95, est +\d+$/m);
    expect(narrow).toMatch(/^Whole pieces: the range held \d of 2$/m);
  });

  it('gives as JSON every figure that the text has', async () => {
    const shop = await finished(6);
    const json = await shop.json('hours');
    const text = await shop.does('hours');
    const told = ({ pieces, ratio }: { pieces: number; ratio: number | null }) =>
      `${pieces}  ${(ratio ?? 0).toFixed(1)} times`;
    expect(text).toMatch(new RegExp(`^ {2}whole piece +${told(json.whole)}`, 'm'));
    expect(json.lastPieces?.pieces).toBe(5);
    expect(text).toMatch(
      new RegExp(`^ {2}last 5 pieces +${told(json.lastPieces ?? json.whole)}`, 'm'),
    );
    const [worst] = json.furthestOff;
    expect(worst).toMatchObject({
      piece: { name: 'Chest 1' },
      minutes: 95,
      note: 'two drawers stuck',
    });
    expect(text).toContain(`est ${Math.round(worst?.estimatedMinutes ?? 0)} took 95`);
    expect(json.spent).toMatchObject({ pieces: 6, about: false });
  });
});

it('hours of one piece give as JSON its classes, its totals and its setup as the text has them', async () => {
  const shop = openShop();
  await shop.does('add', 'Oak chest', '--schedule', 'paint-and-wax');
  await shop.does('pick-up', '1');
  shop.minutesLater(40);
  await shop.does('done', '1');
  await shop.does('put-down');
  const json = await shop.json('hours', '1');
  const text = await shop.does('hours', '1');
  const [first] = json.byClass;
  expect(first).toMatchObject({ stepClass: 'look over', done: 1, minutes: json.steps[0]?.minutes });
  expect(first?.estimate.minutes).toBe(json.steps[0]?.estimate.minutes);
  expect(text).toMatch(
    new RegExp(
      `^ {2}done so far .* ${Math.round(json.done?.minutes ?? -1)} ${json.done?.verdict}`,
      'm',
    ),
  );
  const setup = `${Math.round(json.setupEstimatedMinutes)} +${Math.round(json.setupMinutes)}`;
  expect(text).toMatch(new RegExp(`^ {2}setup, cleanup +${setup} `, 'm'));
  expect(json.begunMinutes).toBe(0);
});
