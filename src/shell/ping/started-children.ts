import { AsyncLocalStorage } from 'node:async_hooks';
import { ChildProcess } from 'node:child_process';
import { subscribe } from 'node:diagnostics_channel';

type OnChild = (child: ChildProcess) => void;

const listeners = new AsyncLocalStorage<OnChild>();
let hasSubscribed = false;

/**
 * Runs `act` and hands over every child process that it starts, now or later, itself or through the libraries it calls.
 * For libraries that start a program and keep its handle to themselves. Where this Node does not announce its children,
 * none is handed over: callers must also cope with that.
 */
export function watchChildren<Result>(onChild: OnChild, act: () => Result): Result {
  if (!hasSubscribed) {
    hasSubscribed = true;
    subscribe('child_process', announce);
  }
  return listeners.run(onChild, act);
}

function announce(message: unknown): void {
  if (typeof message !== 'object' || message === null || !('process' in message)) return;
  if (message.process instanceof ChildProcess) listeners.getStore()?.(message.process);
}
