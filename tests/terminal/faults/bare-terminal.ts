import { spawn } from '@lydell/node-pty';
import xterm from '@xterm/headless';

/** A program in a pseudo-terminal with an emulator that shows what a person would see; for tests and measures alike. */
export type BareTerminal = {
  readonly pid: number;
  readonly lines: () => readonly string[];
  readonly write: (text: string) => void;
  readonly kill: (signal: string) => void;
  /** Resolves once the program has ended and all that it wrote is on the screen. */
  readonly ended: Promise<void>;
  readonly hasEnded: () => boolean;
};

/**
 * @param drawn told after everything that was written: what a person has seen, they have seen
 */
export function openBareTerminal(
  args: readonly string[],
  env: Readonly<Record<string, string>>,
  drawn: (lines: () => readonly string[]) => void = () => undefined,
): BareTerminal {
  const size = { cols: 120, rows: 24 };
  const emulator = new xterm.Terminal({ ...size, allowProposedApi: true });
  const child = spawn(process.execPath, [...args], { name: 'xterm-256color', ...size, env });
  const lines = (): readonly string[] =>
    Array.from({ length: size.rows }, (_, row) => {
      const { active } = emulator.buffer;
      return active.getLine(active.baseY + row)?.translateToString(true) ?? '';
    });
  let hasEnded = false;
  child.onData((data) => emulator.write(data, () => drawn(lines)));
  const ended = new Promise<void>((resolve) => {
    child.onExit(() => {
      hasEnded = true;
      // What is still on its way to the emulator comes before this.
      setImmediate(() => emulator.write('', resolve));
    });
  });
  return {
    pid: child.pid,
    lines,
    write: (text) => {
      if (!hasEnded) child.write(text);
    },
    kill: (signal) => {
      if (!hasEnded) child.kill(signal);
    },
    ended,
    hasEnded: () => hasEnded,
  };
}
