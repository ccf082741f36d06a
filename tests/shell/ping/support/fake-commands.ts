import {
  chmodSync,
  existsSync,
  mkdirSync,
  mkdtempSync,
  readFileSync,
  rmSync,
  writeFileSync,
} from 'node:fs';
import { tmpdir } from 'node:os';
import { delimiter, join } from 'node:path';
import { onTestFinished } from 'vitest';

/** A folder of shell scripts that stand in for real commands, first in the search path; gone when the test ends. */
export function fakeCommands(scripts: Readonly<Record<string, string>>) {
  const folder = mkdtempSync(join(tmpdir(), 'recoat-fakes-'));
  onTestFinished(() => rmSync(folder, { recursive: true, force: true, maxRetries: 3 }));
  const bin = join(folder, 'bin');
  mkdirSync(bin);
  for (const [name, body] of Object.entries(scripts)) {
    writeFileSync(join(bin, name), `#!/bin/sh\nHERE='${folder}'\n${body}\n`);
    chmodSync(join(bin, name), 0o755);
  }
  const file = (name: string): string => join(folder, name);
  return {
    folder,
    bin,
    path: `${bin}${delimiter}${process.env.PATH}`,
    file,
    read: (name: string): string =>
      existsSync(file(name)) ? readFileSync(file(name), 'utf8') : '',
  };
}

/** Sets an environment variable until the test ends; undefined removes it. */
export function setVariable(name: string, value: string | undefined): void {
  const before = process.env[name];
  const put = (text: string | undefined): void => {
    if (text === undefined) delete process.env[name];
    else process.env[name] = text;
  };
  put(value);
  onTestFinished(() => put(before));
}

/** Whether a process with that id is there and not merely waiting to be reaped. */
export function isRunning(pid: number): boolean {
  try {
    process.kill(pid, 0);
  } catch {
    return false;
  }
  try {
    return !/^State:\s+Z/m.test(readFileSync(`/proc/${pid}/status`, 'utf8'));
  } catch {
    return true;
  }
}

export const pause = (ms: number): Promise<void> =>
  new Promise((resolve) => setTimeout(resolve, ms));
