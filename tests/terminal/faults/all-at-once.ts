import { spawn } from 'node:child_process';
import { once } from 'node:events';
import { setTimeout as wait } from 'node:timers/promises';
import { openStore } from '../../../src/persist/index.ts';
import { openBareTerminal } from './bare-terminal.ts';
import { chestInSections, confirmedSections, sectionsIn, type Ran } from './sections.ts';

export type AllAtOnce = {
  /** Notes that commands said they had written. */
  readonly notes: number;
  /** Sections that the screens showed as on and kept. */
  readonly sections: number;
  /** Of both, how many were not in the store in the end. */
  readonly lost: number;
  /** Notes or sections that are there twice. */
  readonly doubled: number;
  readonly damaged: number;
};

const clock = { now: () => Date.now(), today: () => '2026-11-24' };
const betweenPresses = 400;
const patience = 60_000;

/**
 * Two screens of which a key is pressed, a keeper, and commands one after another, all on one store.
 *
 * @param store its folder, which does not exist yet
 */
export async function writeAllAtOnce(ran: Ran, store: string, forMs: number): Promise<AllAtOnce> {
  chestInSections(ran, store);
  const { start, environment } = ran;
  const env = environment(store);
  await command(ran, store, 'timer', 'clamps', '2h');
  const shown = [0, 0];
  const screens = shown.map((_, index) =>
    openBareTerminal([start], env, (lines) => {
      shown[index] = Math.max(shown[index] ?? 0, confirmedSections(lines()) ?? 0);
    }),
  );
  const keeper = spawn(process.execPath, [start, 'keep'], { env, stdio: 'ignore' });
  const keeperEnded = once(keeper, 'close');
  const began = Date.now();
  // The timer stands first and is selected. What is loaded after the first frame takes its time.
  await wait(2000);
  for (const screen of screens) screen.write('1');
  while (!screens.every((screen) => confirmedSections(screen.lines()) !== null)) {
    if (Date.now() - began > patience) throw new Error('a screen shows no section');
    await wait(50);
  }
  const until = Date.now() + forMs;
  let notes = 0;
  const press = async (): Promise<void> => {
    for (let turn = 0; Date.now() < until; turn++) {
      screens[turn % 2]?.write('s');
      await wait(betweenPresses / 2);
    }
  };
  const write = async (): Promise<void> => {
    while (Date.now() < until) {
      await command(ran, store, 'note', 'Chest', `number ${notes}`);
      notes += 1;
    }
  };
  await Promise.all([press(), write()]);
  await wait(1000);
  for (const screen of screens) screen.kill('SIGKILL');
  keeper.kill('SIGTERM');
  await Promise.all([...screens.map(({ ended }) => ended), keeperEnded]);
  const opened = await openStore(store, { clock });
  const facts = opened.ok ? opened.value.bench : [];
  const texts = facts.flatMap((fact) => (fact.kind === 'note-written' ? [fact.body.text] : []));
  const numbers = facts.flatMap((fact) =>
    fact.kind === 'stamped' && fact.body.event === 'section-on' ? [fact.body.section] : [],
  );
  const missing = Array.from({ length: notes }, (_, index) => `number ${index}`).filter(
    (text) => !texts.includes(text),
  );
  const sections = Math.max(...shown);
  return {
    notes,
    sections,
    lost: missing.length + Math.max(0, sections - sectionsIn(facts)),
    doubled: texts.length - new Set(texts).size + numbers.length - new Set(numbers).size,
    damaged: opened.ok && opened.value.notices.length === 0 ? 0 : 1,
  };
}

async function command({ start, environment }: Ran, store: string, ...words: readonly string[]) {
  const child = spawn(process.execPath, [start, ...words], {
    env: environment(store),
    stdio: ['ignore', 'ignore', 'inherit'],
  });
  const [code] = (await once(child, 'close')) as [number | null];
  if (code !== 0) throw new Error(`${words.join(' ')} ended with ${code}`);
}
