import { lookBack } from '../../../src/shell/past/look-back.ts';
import type { StartedThread, startThread } from '../../../src/shell/past/start-thread.ts';

import type { WorkerTold } from '../../../src/shell/past/worker-words.ts';

/**
 * The worker's own code in this process, so that it answers when it is let: the same keys give the same frames. What goes
 * in and out is cloned, as between threads.
 */
export function threadBeside(heard: (news: WorkerTold['is']) => void): {
  readonly start: typeof startThread;
  /** Lets it do its next piece of work, if there is any, and tells what came of the last. */
  readonly goOn: () => void;
} {
  let waiting: (() => void)[] = [];
  return {
    start: (from, { told, failed }): StartedThread => {
      if (from.do !== 'look back' || from.years.folder !== null)
        throw new Error('only looks back, over years that it is given');
      const { facts } = structuredClone(from.years);
      let isOver = false;
      const worker = lookBack(structuredClone(from), {
        years: [2026],
        reader: { readHistory: () => ({ ok: true, value: { facts, notices: [] } }) },
        tell: (news) => {
          const cloned = structuredClone(news);
          waiting.push(() => {
            if (isOver) return;
            heard(news.is);
            told(cloned);
          });
        },
        pause: () =>
          new Promise((resolve) => {
            waiting.push(() => {
              if (!isOver) resolve();
            });
          }),
      });
      worker.failed.catch((error: unknown) => failed(String(error)));
      return {
        wish: (wish) => worker.wish(structuredClone(wish)),
        stop: () => {
          isOver = true;
        },
      };
    },
    goOn: () => {
      const now = waiting;
      waiting = [];
      for (const work of now) work();
    },
  };
}
