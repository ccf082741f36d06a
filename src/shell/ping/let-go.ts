import type { ChildProcess } from 'node:child_process';
import { Socket } from 'node:net';

/** From here on neither the child nor its pipes keep this process running. */
export function letGo(child: ChildProcess): void {
  child.unref();
  for (const stream of [child.stdin, child.stdout, child.stderr]) {
    if (stream instanceof Socket) stream.unref();
  }
}
