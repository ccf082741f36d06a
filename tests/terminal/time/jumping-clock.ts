import { spawn } from 'node:child_process';
import { once } from 'node:events';
import { setTimeout as wait } from 'node:timers/promises';
import type { SessionsJson } from '../../../src/commands/json-shapes/index.ts';
import { openStore } from '../../../src/persist/index.ts';
import { chance } from '../../tracker/support/chance.ts';
import type { Ran } from '../faults/sections.ts';
import { openClockedShop } from './clocked-shop.ts';

export type WrittenWhileJumping = {
  readonly notes: number;
  readonly jumps: number;
  readonly lost: number;
  readonly damaged: number;
  /** By how much the session's minutes are more, or fewer, than those that went by. */
  readonly minutesOff: number;
};

const minute = 60_000;
const day = 24 * 60 * minute;
const betweenJumps = 40;

/**
 * Writes notes by commands, two at a time, while a piece is in hand and somebody sets the clock many times a second,
 * forward and back by up to two days.
 *
 * @param folder an empty one
 */
export async function writeWhileClockJumps(
  ran: Ran,
  folder: string,
  { notes, seed }: { notes: number; seed: number },
): Promise<WrittenWhileJumping> {
  const shop = openClockedShop(ran, folder);
  const env = { ...ran.environment(shop.folder), ...shop.clock.env };
  const random = chance(seed);
  let isOver = false;
  let jumps = 0;
  const jump = async (): Promise<void> => {
    while (!isOver) {
      shop.clock.setBy(Math.round((random() - 0.5) * 4 * day));
      jumps += 1;
      await wait(betweenJumps);
    }
  };
  const write = async (from: number): Promise<void> => {
    for (let number = from; number < notes; number += 2) {
      const words = [ran.start, 'note', 'Stool', `number ${number}`];
      const child = spawn(process.execPath, words, { env, stdio: ['ignore', 'ignore', 'inherit'] });
      const [code] = (await once(child, 'close')) as [number | null];
      if (code !== 0) throw new Error(`note ${number} ended with ${code}`);
    }
  };
  try {
    shop.run('add', 'Stool', '--schedule', 'wet');
    const before = performance.now();
    shop.run('pick-up', 'Stool');
    const picked = performance.now();
    const jumping = jump();
    await Promise.all([write(0), write(1)]).finally(() => (isOver = true));
    await jumping;
    const putting = performance.now();
    shop.run('put-down');
    const after = performance.now();
    const { sessions } = JSON.parse(shop.run('sessions', 'Stool', '--json')) as SessionsJson;
    const clock = { now: shop.clock.now, today: () => '2026-11-24' };
    const opened = await openStore(shop.folder, { clock });
    const facts = opened.ok ? opened.value.bench : [];
    const kept = new Set(
      facts.flatMap((fact) => (fact.kind === 'note-written' ? [fact.body.text] : [])),
    );
    const minutes = sessions.reduce((sum, session) => sum + session.minutes, 0);
    const [least, most] = [(putting - picked) / minute, (after - before) / minute];
    return {
      notes,
      jumps,
      lost: Array.from({ length: notes }, (_, each) => `number ${each}`).filter(
        (text) => !kept.has(text),
      ).length,
      damaged: opened.ok && opened.value.notices.length === 0 ? 0 : 1,
      minutesOff: Math.max(0, least - minutes, minutes - most),
    };
  } finally {
    await shop.remove();
  }
}
