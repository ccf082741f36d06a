import { spawn, type ChildProcess } from 'node:child_process';
import { once } from 'node:events';
import { createInterface } from 'node:readline';
import { onTestFinished } from 'vitest';

/** Starts a program of TypeScript on the Node that runs the tests. */
export function start(
  program: string,
  words: readonly string[],
  options: { readonly uid?: number } = {},
): ChildProcess {
  const child = spawn(process.execPath, [program, ...words], {
    stdio: ['pipe', 'pipe', 'pipe'],
    ...options,
  });
  onTestFinished(() => {
    child.kill('SIGKILL');
  });
  return child;
}

/** Ends well, with everything it wrote; fails with what it wrote to standard error. */
export async function outputOf(child: ChildProcess): Promise<string> {
  let said = '';
  let complaint = '';
  child.stdout?.on('data', (chunk: Buffer) => (said += chunk.toString()));
  child.stderr?.on('data', (chunk: Buffer) => (complaint += chunk.toString()));
  const [code] = (await once(child, 'close')) as [number | null];
  if (code !== 0) throw new Error(`ended with ${code}: ${complaint}`);
  return said;
}

/** A child that is asked by one line and answers with one line of JSON. */
export function conversation(child: ChildProcess) {
  if (!child.stdout || !child.stdin) throw new Error('no pipes');
  const lines = createInterface({ input: child.stdout })[Symbol.asyncIterator]();
  const hear = async (): Promise<unknown> => {
    const { value, done } = await lines.next();
    if (done) throw new Error('the child ended without an answer');
    return JSON.parse(value);
  };
  return {
    hear,
    ask: (request: string): Promise<unknown> => {
      child.stdin?.write(`${request}\n`);
      return hear();
    },
  };
}
