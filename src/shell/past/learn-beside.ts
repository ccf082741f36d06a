import type { LearnedFile } from '../../persist/learned/learned-file.ts';
import type { ToLearn } from './learn-history.ts';
import { startThread, type StartedThread } from './start-thread.ts';

/** Learns from past years in a thread of its own. Broken where it can't, with why. */
export type LearnBeside = (folder: string, from: ToLearn) => Promise<LearnedFile>;

/** @param start for tests */
export const learnBeside =
  (start: typeof startThread = startThread): LearnBeside =>
  (folder, { except, imports, readings }) =>
    new Promise((resolve, reject) => {
      const over: { thread: StartedThread | null } = { thread: null };
      over.thread = start(
        { do: 'learn', folder, except, imports, readings },
        {
          told: (news) => {
            if (news.is !== 'learned') return;
            resolve(news.learned);
            over.thread?.stop();
          },
          failed: (why) => reject(new Error(why)),
        },
      );
    });
