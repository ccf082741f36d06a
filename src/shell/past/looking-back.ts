import type { FactStore } from '../../persist/index.ts';
import { foldBench } from '../../tracker/bench/index.ts';
import type { LookBack, LookingBack } from '../../views/port.ts';
import { clockReading, type Clock } from '../clock.ts';
import { readHistories } from '../recall.ts';
import type { Session } from '../session.ts';
import type { StartedThread, startThread } from './start-thread.ts';
import type { BenchNow, PastYears, WorkerTold } from './worker-words.ts';

export type LookingBackOptions = {
  readonly session: Pick<Session, 'loaded' | 'snapshot' | 'subscribe'>;
  readonly store: () => FactStore | null;
  readonly clock: Clock;
  readonly start: typeof startThread;
};

const nothingYet: LookingBack = {
  is: 'reading',
  done: 0,
  of: 0,
  says: null,
  review: null,
  backTest: null,
  problems: [],
  found: null,
};

/** Looks back over past years in a thread of its own, and keeps what comes of it for the screens. */
export function createLookingBack({
  session,
  store,
  clock,
  start,
}: LookingBackOptions): LookBack & {
  readonly state: () => LookingBack | undefined;
  readonly subscribe: (listener: () => void) => () => void;
} {
  let state: LookingBack | undefined;
  let worker: StartedThread | null = null;
  let given: BenchNow['facts'] | null = null;
  let stopFollowing: () => void = () => undefined;
  const listeners = new Set<() => void>();
  const become = (next: LookingBack | undefined): void => {
    state = next;
    for (const listener of listeners) listener();
  };
  const change = (changes: Partial<LookingBack>): void => {
    if (state !== undefined) become({ ...state, ...changes });
  };
  const benchNow = (): BenchNow => {
    const facts = session.loaded().bench;
    given = facts;
    return { facts, clock: clockReading(clock), now: clock.now() };
  };
  const pastYears = (): PastYears => {
    const { folder } = session.snapshot();
    if (folder !== null) return { folder };
    const open = store();
    return { folder, facts: open === null ? [] : readHistories(open).facts };
  };

  const told = (news: WorkerTold): void => {
    switch (news.is) {
      case 'read':
        return change({ done: news.done, of: news.of });
      case 'review':
        return change({
          ...(state?.is === 'reading' ? { is: 'waiting', done: 0, of: 0 } : {}),
          review: news.review,
          problems: news.problems,
        });
      case 'tried': {
        const { result, isWhole } = news;
        const { done, of } = result;
        return change({ is: isWhole ? 'waiting' : 'trying', done, of, backTest: result });
      }
      case 'found':
        return change({ found: { piece: news.piece, bench: foldBench(news.facts) } });
      case 'learned':
        return;
    }
  };

  const stopWorker = (): void => {
    stopFollowing();
    worker?.stop();
    worker = null;
  };

  const begin = (): void => {
    if (worker !== null) return;
    // What was shown before it was stopped stays till there is something newer.
    become({ ...nothingYet, review: state?.review ?? null });
    const { zone } = session.snapshot().shop;
    try {
      worker = start(
        { do: 'look back', years: pastYears(), bench: benchNow(), zone },
        {
          told,
          failed: (why) => {
            stopWorker();
            change({ is: 'failed', says: `${why}.` });
          },
        },
      );
    } catch (error) {
      change({
        is: 'failed',
        says: `${error instanceof Error ? error.message : String(error)}.`,
      });
      return;
    }
    stopFollowing = session.subscribe(() => {
      if (session.loaded().bench !== given) worker?.wish({ do: 'take bench', bench: benchNow() });
    });
  };

  return {
    state: () => state,
    subscribe: (listener) => {
      listeners.add(listener);
      return () => listeners.delete(listener);
    },
    begin,
    backTest: () => {
      if (worker === null || state === undefined || state.is === 'trying') return;
      if (state.backTest !== null && state.backTest.done === state.backTest.of) return;
      worker.wish({ do: 'back-test' });
    },
    find: (piece) => {
      begin();
      worker?.wish({ do: 'find', piece });
    },
    stop: () => {
      if (worker === null) return;
      stopWorker();
      change({ is: 'stopped' });
    },
    end: () => {
      stopWorker();
      become(undefined);
    },
  };
}
