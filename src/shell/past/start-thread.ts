import { join } from 'node:path';
import { Worker } from 'node:worker_threads';
import type { LookBackWish, WorkerStart, WorkerTold } from './worker-words.ts';

export type StartedThread = {
  readonly wish: (wish: LookBackWish) => void;
  /** Ends it at once; nothing more is heard of it. */
  readonly stop: () => void;
};

export type ThreadListener = {
  readonly told: (told: WorkerTold) => void;
  /** It ended before its work was done, and why. */
  readonly failed: (why: string) => void;
};

/** Beside the bundle lies the bundled worker, beside the source its source. */
const file = `history-worker.${import.meta.filename.endsWith('.ts') ? 'ts' : 'cjs'}`;

/** Starts a thread that works on past years. It keeps no process alive. */
export function startThread(start: WorkerStart, listener: ThreadListener): StartedThread {
  const worker = new Worker(join(import.meta.dirname, file), {
    workerData: { start },
    stdout: false,
  });
  worker.unref();
  let isOver = false;
  const failed = (why: string): void => {
    if (!isOver) listener.failed(why);
    isOver = true;
  };
  worker.on('message', (told: WorkerTold) => {
    if (!isOver) listener.told(told);
  });
  worker.on('error', (error: unknown) => failed(whyOf(error)));
  worker.on('exit', (code) => {
    if (code !== 0) failed(`its thread ended with ${code}`);
  });
  return {
    wish: (wish) => worker.postMessage(wish),
    stop: () => {
      isOver = true;
      void worker.terminate();
    },
  };
}

const whyOf = (error: unknown): string =>
  error instanceof Error && 'code' in error && error.code === 'ERR_WORKER_OUT_OF_MEMORY'
    ? 'memory ran out'
    : error instanceof Error
      ? error.message
      : String(error);
