import { spawn as spawnProcess, type ChildProcess } from 'node:child_process';
import type { PingHook } from '../../tracker/settings/index.ts';
import { endChild } from './end-child.ts';
import { harmlessLine } from './harmless-text.ts';
import type { TerminalPing } from './terminal.ts';

/** `why` goes on from "No ping by the hook: ". */
export type HookOutcome = { readonly ok: true } | { readonly ok: false; readonly why: string };

export type HookOptions = {
  readonly env: NodeJS.ProcessEnv;
  readonly spawn?: typeof spawnProcess;
  /** Milliseconds until a hook that has not ended is ended. */
  readonly timeLimit?: number;
};

export type SendToHook = (hook: PingHook, ping: TerminalPing) => Promise<HookOutcome>;

const usualLimit = 10_000;
const titleLimit = 200;
const bodyLimit = 1000;
const errorTextLimit = 300;
const mostUnderWay = 4;
/** Milliseconds for what it wrote last to arrive. */
const lastWords = 200;

/** What a hook gets on its standard input: one line. Fields keep name and meaning; new ones may come. */
export const hookInput = ({ id, title, body, loud }: TerminalPing): string =>
  `${JSON.stringify({
    ping: id,
    title: harmlessLine(title, titleLimit),
    body: harmlessLine(body, bodyLimit),
    loud,
  })}\n`;

/**
 * Hands pings to a program of the user's own: started by its list of words, without a shell, so that no text of a ping can
 * run anything. It has a time limit, and what it prints goes nowhere, except the end of what it complains of.
 */
export function createHook({
  env,
  spawn = spawnProcess,
  timeLimit = usualLimit,
}: HookOptions): SendToHook {
  let underWay = 0;
  return async ([file, ...words], ping) => {
    if (underWay >= mostUnderWay)
      return { ok: false, why: `${underWay} of its runs have not ended yet.` };
    underWay++;
    try {
      return await run(file, words, hookInput(ping));
    } finally {
      underWay--;
    }
  };

  function run(file: string, words: readonly string[], input: string): Promise<HookOutcome> {
    return new Promise((resolve) => {
      const failed = (why: string): void => resolve({ ok: false, why });
      let child: ChildProcess;
      try {
        child = spawn(file, [...words], {
          env,
          shell: false,
          stdio: ['pipe', 'ignore', 'pipe'],
          windowsHide: true,
        });
      } catch (error) {
        return failed(startFailure(file, error));
      }
      const timer = setTimeout(() => {
        endChild(child);
        failed(`${file} had not ended after ${Math.round(timeLimit / 1000)} s and was ended.`);
      }, timeLimit);
      let complaint = '';
      // A letter may come in two pieces.
      child.stderr?.setEncoding('utf8').on('data', (text: string) => {
        complaint = (complaint + text).slice(-errorTextLimit);
      });
      // A hook that reads nothing closes its end before all is written; its exit tells more.
      child.stdin?.on('error', () => {});
      child.stdin?.end(input);
      child.once('error', (error) => {
        clearTimeout(timer);
        failed(startFailure(file, error));
      });
      const ended = (code: number | null, signal: NodeJS.Signals | null): void => {
        clearTimeout(timer);
        child.stderr?.destroy();
        if (code === 0) return resolve({ ok: true });
        const how = code === null ? `was ended by ${signal ?? 'a signal'}` : `ended with ${code}`;
        const said = harmlessLine(complaint, errorTextLimit);
        failed(`${file} ${how}${said === '' ? '.' : `: ${said}`}`);
      };
      child.once('close', ended);
      // What it left running in the background keeps its end of the pipe, and is none of this program's business.
      child.once('exit', (code, signal) => setTimeout(ended, lastWords, code, signal));
    });
  }
}

function startFailure(file: string, error: unknown): string {
  const code = error instanceof Error && 'code' in error ? String(error.code) : String(error);
  if (code === 'ENOENT') return `the program ${file} is not there.`;
  if (code === 'EACCES') return `${file} may not be run: set its right to execute.`;
  return `${file} does not start (${code}).`;
}
