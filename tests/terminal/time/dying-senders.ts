import { setTimeout as wait } from 'node:timers/promises';
import { chance } from '../../tracker/support/chance.ts';
import type { Ran } from '../faults/sections.ts';
import { openClockedShop, type ClockedShop, type Heard } from './clocked-shop.ts';

/** How whoever sends a ping dies: by its own hook, before or after that has passed the ping on, or at a random instant. */
export type End = 'kill before' | 'kill after' | 'at random';
export type Sender = 'screen' | 'keeper';

export type SenderDeaths = {
  readonly deaths: number;
  /** Pings that nobody ever told. */
  readonly missing: number;
  /** Pings that were told by whoever came next: the sender had not. */
  readonly handedOver: number;
  /** Told twice, where the sender had died before it could put on record that it had told it, and said so. */
  readonly twice: number;
  /** Told twice although that was on record, or without saying so. */
  readonly unexplained: number;
};

const minute = 60_000;
/** Everything from before the claim till after it is on record, on a busy machine too. */
const killedWithin = { from: -20, till: 150 };
/** Half a minute without a word of a ping, and some more. */
const claimIsLostAfter = 45_000;
const patience = 30_000;

/**
 * Kills whoever sends a ping with SIGKILL, at some instant around the claim and the sending, and looks what a person
 * hears of it: a keeper goes on where a screen died, a screen is opened where the keeper did.
 *
 * @param folder an empty one
 */
export async function killSenders(
  ran: Ran,
  folder: string,
  { ends, seed }: { ends: readonly (readonly [Sender, End])[]; seed: number },
): Promise<SenderDeaths> {
  const random = chance(seed);
  const shop = openClockedShop(ran, folder);
  const count = { deaths: 0, missing: 0, handedOver: 0, twice: 0, unexplained: 0 };
  try {
    for (const [index, [sender, end]] of ends.entries()) {
      const label = `number ${index}`;
      const { from, till } = killedWithin;
      await dieSending(shop, { sender, end, label, after: from + random() * (till - from) });
      const heard = shop.heard().filter(({ title }) => title.includes(label));
      const first = shop.onRecord().find(({ id }) => id === heard[0]?.ping);
      count.deaths += 1;
      if (heard.length === 0) count.missing += 1;
      if (heard.length === 1 && heard.every(saysAgain)) count.handedOver += 1;
      if (heard.length > 1) {
        const isExplained = first?.ways === null && heard.slice(1).every(saysAgain);
        if (isExplained && heard.length === 2) count.twice += 1;
        else count.unexplained += 1;
      }
    }
    return count;
  } finally {
    await shop.remove();
  }
}

const saysAgain = ({ body }: Heard): boolean => body.includes('Perhaps told before.');

async function dieSending(
  shop: ClockedShop,
  told: {
    readonly sender: Sender;
    readonly end: End;
    readonly label: string;
    readonly after: number;
  },
): Promise<void> {
  const { sender, end, label, after } = told;
  shop.run('timer', label, '5min');
  const due = shop.clock.now() + 5 * minute;
  const keeper = shop.keeper();
  await until(shop, 'the keeper', () => shop.run('bench').includes('A keeper stands by'));
  const screen = sender === 'screen' ? shop.screen() : null;
  if (screen !== null) await until(shop, 'a screen', () => watches(screen.lines()));
  const kill = (): void => {
    if (screen === null) keeper.kill('SIGKILL');
    else screen.kill('SIGKILL');
  };
  if (end !== 'at random') shop.hookIsTo(end, screen?.pid ?? keeper.pid ?? 0);
  shop.clock.sleep(due - shop.clock.now() - 1500);
  // Everybody looks once more before, and so knows when the next one is due.
  shop.run('conditions', '20', '50');
  if (end === 'at random') {
    await wait(Math.max(0, due - shop.clock.now() + after));
    kill();
  } else await until(shop, 'the hook', shop.hookHasDone);
  if (screen === null) await waitForEnd(shop, keeper);
  else await screen.ended;
  const next = sender === 'screen' ? null : shop.screen();
  if (next !== null) await until(shop, 'a screen', () => watches(next.lines()));
  await shop.passes(claimIsLostAfter);
  await wait(500);
  next?.kill('SIGKILL');
  await next?.ended;
  if (sender === 'screen') {
    keeper.kill('SIGKILL');
    await waitForEnd(shop, keeper);
  }
}

/** A screen that shows its bench, and has opened its store for writing. */
const watches = (lines: readonly string[]): boolean => lines.some((line) => line !== '');

const waitForEnd = (shop: ClockedShop, child: ReturnType<ClockedShop['keeper']>): Promise<void> =>
  until(shop, 'the end of the keeper', () => child.exitCode !== null || child.signalCode !== null);

async function until(shop: ClockedShop, what: string, isSo: () => boolean): Promise<void> {
  const began = performance.now();
  while (!isSo()) {
    if (performance.now() - began > patience)
      throw new Error(`waited in vain for ${what}; last heard: ${shop.heard().at(-1)?.title}`);
    await wait(50);
  }
}
