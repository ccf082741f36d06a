import { existsSync, readFileSync, rmSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { createLearning } from '../../../src/shell/learning.ts';
import { createLearnAnew } from '../../../src/shell/past/learn-anew.ts';
import { learnBeside, type LearnBeside } from '../../../src/shell/past/learn-beside.ts';
import { foldBench } from '../../../src/tracker/bench/index.ts';
import { pastShop } from './past-shop.ts';

async function learner(beside: LearnBeside | undefined) {
  const { folder, store } = await pastShop(3);
  const loaded = store.load();
  if (!loaded.ok) throw new Error(loaded.problem.says);
  const learning = createLearning(folder);
  const said: string[] = [];
  let learned = 0;
  const bench = foldBench(loaded.value.bench);
  const learn = createLearnAnew({
    learning,
    folder,
    beside,
    store: () => store,
    now: () => ({ bench, readings: [] }),
    learned: () => (learned += 1),
    say: (notice) => said.push(notice),
  });
  return { folder, store, learning, learn, bench, said, times: () => learned };
}

const turns = (): Promise<void> => new Promise((resolve) => setTimeout(resolve, 10));

describe('learning from past years', () => {
  it('comes in a thread of its own to what it comes to on the spot, and leaves the same file', async () => {
    const { folder, learn, learning, store, bench, times } = await learner(learnBeside());
    const path = join(folder, 'learned.json');
    learn();
    expect(existsSync(path)).toBe(false);
    while (times() === 0) await turns();
    expect(learning.toLearn(store, bench, [])).toBeNull();
    const beside = readFileSync(path, 'utf8');
    rmSync(path);
    createLearning(folder).refresh(store, bench, []);
    expect(readFileSync(path, 'utf8')).toBe(beside);
    learn();
    await turns();
    expect(times()).toBe(1);
  });

  it('learns once where it is asked several times, and looks again afterwards', async () => {
    let asked = 0;
    const counted: LearnBeside = (...given) => {
      asked += 1;
      return learnBeside()(...given);
    };
    const { learn, times } = await learner(counted);
    learn();
    learn();
    learn();
    expect(asked).toBe(1);
    while (times() === 0) await turns();
    await turns();
    expect(asked).toBe(1);
  });

  it('says why it could not, and tries again when it is asked the next time', async () => {
    let asked = 0;
    const { learn, said, times } = await learner(() => {
      asked += 1;
      return Promise.reject(new Error('memory ran out'));
    });
    learn();
    await turns();
    expect(said).toEqual([
      'Not learned from past years: memory ran out. Estimates stay as they were; the next start tries again.',
    ]);
    expect(times()).toBe(0);
    learn();
    await turns();
    expect(asked).toBe(2);
  });

  it('is done at once where there is no thread for it', async () => {
    const { learn, times } = await learner(undefined);
    learn();
    expect(times()).toBe(1);
  });
});
