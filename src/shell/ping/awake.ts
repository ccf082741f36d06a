import type { ChildProcess, spawn as spawnProcess } from 'node:child_process';
import { awakeCommands, awakeReason, type AwakeCommand } from './awake-commands.ts';
import { harmlessLine } from './harmless-text.ts';
import { letGo } from './let-go.ts';

/** `why` is for the bench: for what it is kept awake and what still lets it sleep, or why it may sleep. */
export type AwakeState = { readonly wanted: boolean; readonly kept: boolean; readonly why: string };

export type Awake = {
  /** Asks for the machine to stay awake, in the user's words (`Oak chest, B on`); null lets it sleep again. Cheap to repeat. */
  readonly want: (reason: string | null) => void;
  readonly state: () => AwakeState;
};

export type AwakeOptions = {
  readonly platform: NodeJS.Platform;
  readonly env: NodeJS.ProcessEnv;
  readonly spawn: typeof spawnProcess;
  /** Milliseconds after which a hold that was lost is asked for again. */
  readonly retryAfter?: number;
};

type Hold = {
  readonly child: ChildProcess;
  readonly command: AwakeCommand;
  answered: boolean;
  timer?: NodeJS.Timeout;
};
type Cause = { readonly missing: boolean; readonly says: string };

const maySleep = 'This machine may sleep: no ping then.';
const graceToEnd = 2000;
const errorTextLimit = 2000;

/**
 * Keeps the machine awake through a child that holds the system's lock for as long as a pipe from here stays open.
 * The pipe closes however this process ends, killed or not, so that no lock outlives it.
 */
export function createAwake({ platform, env, spawn, retryAfter = 30_000 }: AwakeOptions): Awake {
  const commands = awakeCommands(platform, env);
  let wanted: string | null = null;
  let hold: Hold | null = null;
  let retry: NodeJS.Timeout | undefined;
  let refusal = '';

  const begin = (index: number, causes: readonly Cause[]): void => {
    const command = commands[index];
    if (command === undefined) {
      hold = null;
      refusal =
        (causes.find((cause) => !cause.missing) ?? causes[0])?.says ??
        `Nothing is known that keeps ${platform} awake.`;
      return;
    }
    const next = (cause: Cause): void => begin(index + 1, [...causes, cause]);
    refusal = 'It was just asked to stay awake.';
    try {
      const child = spawn(command.file, [...command.args(awakeReason(wanted ?? ''))], {
        env,
        stdio: ['pipe', 'pipe', 'pipe'],
        windowsHide: true,
      });
      hold = { child, command, answered: false };
      watch(hold, next);
    } catch (error) {
      next({
        missing: false,
        says: `${command.file} does not start (${error instanceof Error ? error.message : String(error)}).`,
      });
    }
  };

  const watch = (mine: Hold, next: (cause: Cause) => void): void => {
    const { child, command } = mine;
    const fail = (says: string, isMissing = false): void => {
      if (hold !== mine || mine.answered) return;
      end(mine);
      next({ missing: isMissing, says });
    };
    mine.timer = setTimeout(
      () => fail(`${command.file} gave no answer.`),
      command.answersWithin,
    ).unref();
    child.once('spawn', () => letGo(child));
    child.once('error', (error: NodeJS.ErrnoException) => {
      if (error.code === 'ENOENT') fail(`The command ${command.file} is missing.`, true);
      else fail(`${command.file} does not start (${error.code ?? error.message}).`);
    });
    let errorText = '';
    child.stderr?.on('data', (chunk: Buffer) => {
      errorText = (errorText + chunk.toString()).slice(0, errorTextLimit);
    });
    child.stdout?.once('data', () => {
      if (hold !== mine || hasEnded(child)) return;
      mine.answered = true;
      clearTimeout(mine.timer);
    });
    // Writing to a child that is gone fails; its exit tells more.
    child.stdin?.on('error', () => {});
    child.stdin?.write('held\n');
    child.once('close', () =>
      fail(`${command.file} was refused (${harmlessLine(errorText, 120) || 'no reason given'}).`),
    );
    child.once('exit', () => {
      if (hold !== mine || !mine.answered) return;
      hold = null;
      refusal = `${command.file} ended by itself; it is asked again soon.`;
      retry = setTimeout(() => begin(0, []), retryAfter).unref();
    });
  };

  return {
    want: (reason) => {
      const before = wanted;
      wanted = reason;
      if (before === null && reason !== null) begin(0, []);
      if (before !== null && reason === null) {
        clearTimeout(retry);
        if (hold) end(hold);
        hold = null;
      }
    },
    state: () => {
      if (wanted === null) return { wanted: false, kept: false, why: '' };
      if (hold?.answered)
        return {
          wanted: true,
          kept: true,
          why: `Kept awake for ${awakeReason(wanted)}. ${hold.command.limits}`.trimEnd(),
        };
      return { wanted: true, kept: false, why: `${maySleep} ${refusal}` };
    },
  };
}

const hasEnded = (child: ChildProcess): boolean =>
  child.exitCode !== null || child.signalCode !== null;

/** Closing the pipe ends the child in order; if it doesn't go, it is made to. */
function end({ child, timer }: Hold): void {
  clearTimeout(timer);
  child.stdin?.end();
  const force = setTimeout(() => child.kill('SIGKILL'), graceToEnd).unref();
  child.once('exit', () => clearTimeout(force));
}
