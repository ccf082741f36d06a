import { describe, expect, it } from 'vitest';
import { must } from './support/must.ts';
import { openShop, type Shop } from './support/shop.ts';

/** Two sessions on the first of two pieces: 9:00 to 9:40 and 11:00 to 11:30. */
const withSessions = async (): Promise<Shop> => {
  const shop = openShop({ now: '2026-11-24T08:00:00-05:00' });
  await shop.does('add', 'Oak chest', '--schedule', 'paint-and-wax');
  await shop.does('add', 'Elm chair', '--schedule', 'paint-and-wax');
  for (const [wait, length] of [
    [60, 40],
    [80, 30],
  ] as const) {
    shop.minutesLater(wait);
    await shop.does('pick-up', '1');
    shop.minutesLater(length);
    await shop.does('put-down');
  }
  shop.minutesLater(60);
  return shop;
};

const spans = async (shop: Shop, piece = '1'): Promise<readonly string[]> =>
  (await shop.json('sessions', piece)).sessions.map(
    ({ start, end }) => `${start.slice(11, 16)}-${must(end).slice(11, 16)}`,
  );

describe('sessions', () => {
  it('are listed, the last one first', async () => {
    const shop = await withSessions();
    expect(await spans(shop)).toEqual(['11:00-11:30', '09:00-09:40']);
    expect(await shop.does('sessions', '1')).toMatch(
      /^1 {2}Tue 24 Nov {2}11:00 to 11:30 {2}30 min .*\n2 {2}Tue 24 Nov {2}09:00 to 09:40 {2}40 min /,
    );
  });

  it('that went over midnight tell the day on which they ended', async () => {
    const shop = openShop({ now: '2026-11-24T17:00:00-05:00' });
    await shop.does('add', 'Oak chest', '--schedule', 'paint-and-wax');
    await shop.does('pick-up', '1');
    shop.minutesLater(15 * 60);
    await shop.does('put-down');
    expect(await shop.does('sessions', '1')).toContain('Tue 24 Nov  17:00 to Wed 08:00  900 min');
  });

  it('get other ends, and what was first recorded stays', async () => {
    const shop = await withSessions();
    await shop.does('correct-session', '1', '2', '--start', '8:45', '--end', '+10');
    expect(await spans(shop)).toEqual(['11:00-11:30', '08:45-09:50']);
    const { sessions } = await shop.json('sessions', '1');
    expect(sessions[1]).toMatchObject({
      minutes: 65,
      first: { start: '2026-11-24T09:00:00.000-05:00', end: '2026-11-24T09:40:00.000-05:00' },
    });
    await shop.does('take-back');
    expect(await spans(shop)).toEqual(['11:00-11:30', '09:00-09:40']);
  });

  it('moved without another length say on the job card when they first began, else how long they were', async () => {
    const shop = await withSessions();
    await shop.does('correct-session', '1', '1', '--start', '11:10', '--end', '11:40');
    const card = async () => (await shop.does('job-card', '1')).replaceAll(/\s+/g, ' ');
    expect(await card()).toMatch(/session corrected 24 Nov: (tag )?first began 11:00/);
    await shop.does('correct-session', '1', '1', '--end', '11:50');
    expect(await card()).toMatch(/session corrected 24 Nov: was (tag )?30/);
  });

  it('go to the piece and step that were really worked', async () => {
    const shop = await withSessions();
    await shop.does('correct-session', '1', '1', '--to', 'Elm', '--step', '2');
    expect(await spans(shop)).toEqual(['09:00-09:40']);
    const { sessions } = await shop.json('sessions', '2');
    const { steps } = await shop.json('steps', '2');
    expect(sessions[0]?.targets).toEqual([
      {
        piece: expect.objectContaining({ name: 'Elm chair' }),
        part: null,
        step: { id: steps[1]?.id, name: steps[1]?.name },
      },
    ]);
  });

  it('of several pieces in one go change on the piece that is named, and the others keep their share', async () => {
    const shop = openShop({ now: '2026-11-24T08:00:00-05:00' });
    for (const name of ['Oak chest', 'Elm chair', 'Ash shelf'])
      await shop.does('add', name, '--schedule', 'paint-and-wax');
    await shop.does('pick-up', '1', '2');
    shop.minutesLater(40);
    await shop.does('put-down');
    const own = (await shop.json('steps', '2')).steps;
    const worked = async () =>
      must((await shop.json('sessions', '2')).sessions[0]).targets.map(
        ({ piece, step }) => `${piece.name}: ${step?.id}`,
      );
    await shop.does('correct-session', '2', '1', '--step', '2');
    expect((await worked()).toSorted()).toEqual([
      `Elm chair: ${own[1]?.id}`,
      `Oak chest: ${own[0]?.id}`,
    ]);
    await shop.does('correct-session', '2', '1', '--to', '3', '--step', '1');
    expect((await shop.json('sessions', '2')).sessions).toEqual([]);
    const minutes = async (piece: string) => (await shop.json('hours', piece)).recordedMinutes;
    expect(await minutes('1')).toBeCloseTo(20, 6);
    expect(await minutes('3')).toBeCloseTo(20, 6);
  });

  it('on a part stay on it where only the step was another, and on the step where only the part was', async () => {
    const shop = openShop({ now: '2026-11-24T08:00:00-05:00' });
    await shop.does('add', 'Oak chest', '--schedule', 'paint-and-wax');
    await shop.does('parts', '1', 'case, drawers');
    await shop.does('pick-up', '1', '--part', 'drawers');
    shop.minutesLater(40);
    await shop.does('put-down');
    const { steps } = await shop.json('steps', '1');
    const worked = async () => {
      const [target] = must((await shop.json('sessions', '1')).sessions[0]).targets;
      return [target?.part?.name, target?.step?.id];
    };
    await shop.does('correct-session', '1', '1', '--step', '2');
    expect(await worked()).toEqual(['drawers', steps[1]?.id]);
    await shop.does('correct-session', '1', '1', '--part', 'case');
    expect(await worked()).toEqual(['case', steps[1]?.id]);
    await shop.does('correct-session', '1', '1', '--other');
    expect(await worked()).toEqual(['case', undefined]);
  });

  it('never were, or were after all', async () => {
    const shop = await withSessions();
    await shop.does('correct-session', '1', '1', '--drop');
    expect((await shop.json('hours', '1')).recordedMinutes).toBeCloseTo(40, 6);
    expect((await shop.json('sessions', '1')).sessions[0]?.dropped).toBe(true);
    await shop.does('correct-session', '1', '1', '--undrop');
    expect((await shop.json('hours', '1')).recordedMinutes).toBeCloseTo(70, 6);
  });

  it.each([
    [
      ['1', '--start', '9:30'],
      1,
      'Oak chest was in hand at that time. Correct that session first.',
    ],
    [['1', '--end', '10:00'], 1, 'it would end before it begins.'],
    [['1', '--end', '23:00'], 1, 'that time is still to come.'],
    [['1', '--end', '1:99'], 64, '"1:99" is no time of day.'],
    [['1', '--start', '-90x'], 64, 'is no'],
    [['1', '--drop', '--undrop'], 64, 'give --drop or --undrop, not both.'],
    [['1', '--trim', '--end', '11:20'], 64, 'give --trim or --end, not both.'],
    [['1', '--trim'], 1, 'nothing tells where it could be trimmed to. Give --end.'],
    [['1'], 64, 'say what was wrong'],
    [['3', '--drop'], 2, '1 Oak chest has no session "3"; it has 2.'],
    [['1', '--to', 'Emm chair'], 2, 'there is no piece "Emm chair". Nearest: 2 Elm chair.'],
  ])('are not corrected by %j', async (words, code, says) => {
    const shop = await withSessions();
    const refused = await shop.refuses('correct-session', '1', ...words);
    expect(refused.code).toBe(code);
    expect(refused.says).toMatch(/^Not corrected: /);
    expect(refused.says).toContain(says);
    expect(await spans(shop)).toEqual(['11:00-11:30', '09:00-09:40']);
  });

  it('that were left running are trimmed to where the work seems to have stopped', async () => {
    const shop = openShop({ now: '2026-11-24T08:00:00-05:00' });
    await shop.does('add', 'Oak chest', '--schedule', 'paint-and-wax');
    await shop.does('pick-up', '1');
    shop.minutesLater(20);
    await shop.does('done', '1');
    shop.minutesLater(5 * 60);
    await shop.does('put-down');
    const { trimTo } = must((await shop.json('sessions', '1')).sessions[0]);
    expect(trimTo).not.toBeNull();
    await shop.does('correct-session', '1', '1', '--trim');
    expect((await shop.json('sessions', '1')).sessions[0]?.end).toBe(trimTo);
  });
});
