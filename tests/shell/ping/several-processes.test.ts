import { describe, expect, it } from 'vitest';
import { hour, minute, second } from '../../../src/tracker/time/index.ts';
import { smallSchedule } from '../support/small-schedule.ts';
import { severalProcesses } from '../support/processes.ts';

/** A stool on the bench, and so many seconds that go by. */
function shopWithStool() {
  const shop = severalProcesses();
  shop.act({ do: 'add piece', name: 'Stool', schedule: smallSchedule });
  const [piece = ''] = shop.pieceIds();
  const pass = async (seconds: number): Promise<void> => {
    for (let each = 0; each < seconds; each++) await shop.second();
  };
  return { ...shop, piece, pass };
}

const timer = (ms: number) => ({ do: 'start timer', piece: null, label: 'clamps', ms }) as const;

describe('several processes that ping', () => {
  it('ask once about a hold, also after the clock was set', async () => {
    const { act, clock, start, pass, piece, told } = shopWithStool();
    await start('screen A');
    act({ do: 'place hold', piece, reason: 'hardware', askAgain: '2026-11-24' });
    await pass(5);
    expect(told).toHaveLength(1);
    clock.set(hour);
    await pass(60);
    expect(told).toHaveLength(1);
  });

  it('do not leave a ping to a screen that is there and has been stopped', async () => {
    const { act, start, stop, goOn, pass, told } = shopWithStool();
    await start('keeper');
    await start('screen A');
    act(timer(minute));
    await pass(10);
    stop('screen A');
    await pass(50 + 48);
    expect(told.map(({ by }) => by)).toEqual(['keeper']);
    goOn('screen A');
    await pass(minute / second);
    expect(told).toHaveLength(1);
  });

  it('leave it to the screen where both had slept', async () => {
    const { act, clock, start, pass, told } = shopWithStool();
    await start('keeper');
    await start('screen A');
    act(timer(minute));
    await pass(10);
    clock.pass(3 * hour);
    await pass(60);
    expect(told.map(({ by }) => by)).toEqual(['screen A']);
  });

  it('hand over at once where the screen dies just before a ping is due', async () => {
    const { act, clock, die, start, pass, told } = shopWithStool();
    await start('keeper');
    await start('screen A');
    act(timer(53 * second));
    const due = clock.now() + 53 * second;
    await pass(50);
    die('screen A', 'at rest');
    await pass(20);
    expect(told.map(({ by, at }) => [by, at - due])).toEqual([['keeper', 0]]);
  });

  it('tell again within half a minute what a sender that died left, also where the clock was set back', async () => {
    const { act, clock, die, start, pass, told } = shopWithStool();
    await start('screen A');
    await start('screen B');
    act(timer(minute));
    await pass(55);
    die('screen A', 'claimed');
    die('screen B', 'claimed');
    await pass(5);
    await start('screen A');
    clock.set(-2 * hour);
    await pass(62);
    expect(told.map(({ by, saysAgain }) => [by, saysAgain])).toContainEqual(['screen A', true]);
  });
});
