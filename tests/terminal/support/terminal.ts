import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { setTimeout as wait } from 'node:timers/promises';
import { spawn, type IPty } from '@lydell/node-pty';
import xterm from '@xterm/headless';
import { onTestFinished } from 'vitest';

export const packageFolder = join(import.meta.dirname, '..', '..', '..');
export const startFile = join(packageFolder, 'dist', 'start.cjs');

export const keys = {
  enter: '\r',
  space: ' ',
  escape: '\u001b',
  tab: '\t',
  backspace: '\u007f',
  up: '\u001b[A',
  down: '\u001b[B',
  right: '\u001b[C',
  left: '\u001b[D',
  controlC: '\u0003',
} as const;

export type TerminalOptions = {
  readonly args?: readonly string[];
  readonly folder?: string;
  readonly columns?: number;
  readonly rows?: number;
  readonly env?: Readonly<Record<string, string>>;
};

/** Presses closer than the guards' gap would count as a held key, also where a busy machine delivers the first late. */
const betweenPresses = 400;
const patience = 15_000;
/** More than a second's change of its figures writes. */
const aTick = 400;

/** The real program in a pseudo-terminal, and a terminal emulator that shows what a person would see. */
export function openTerminal({
  args = [],
  folder,
  columns = 80,
  rows = 24,
  env = {},
}: TerminalOptions = {}) {
  const store = folder ?? temporaryFolder();
  const emulator = new xterm.Terminal({ cols: columns, rows, allowProposedApi: true });
  const child: IPty = spawn(process.execPath, [startFile, ...args], {
    name: 'xterm-256color',
    cols: columns,
    rows,
    cwd: packageFolder,
    env: { ...cleanEnvironment(), RECOAT_FOLDER: store, ...env },
  });
  let raw = '';
  let hasSettled = false;
  let ended: { readonly code: number; readonly signal: number | undefined } | null = null;
  child.onData((data) => {
    raw += data;
    emulator.write(data);
  });
  const firstFrame = new Promise<void>((resolve) => {
    child.onData(() => {
      if (raw.includes('\u001b[?2026l')) resolve();
    });
  });
  child.onExit(({ exitCode, signal }) => {
    ended = { code: exitCode, signal };
  });
  const lines = (): readonly string[] =>
    Array.from(
      { length: emulator.rows },
      (_, row) =>
        emulator.buffer.active
          .getLine(emulator.buffer.active.baseY + row)
          ?.translateToString(true) ?? '',
    );
  const screen = (): string => lines().join('\n');
  const until = async (what: string, isSo: () => boolean, atMost = patience): Promise<void> => {
    const began = Date.now();
    while (!isSo()) {
      if (Date.now() - began > atMost)
        throw new Error(`waited in vain for ${what}; the screen shows\n${screen()}`);
      await wait(20);
    }
  };
  const terminal = {
    folder: store,
    pid: child.pid,
    lines,
    screen,
    /** Everything that was written, with its escape sequences. */
    raw: () => raw,
    /** Resolves with the very bytes that end the first frame, sooner than anything that looks now and then. */
    firstFrame: () => firstFrame,
    isAlternateScreen: () => emulator.buffer.active.type === 'alternate',
    /** The emulator's own buffer, for colours and pictures. */
    emulator,
    /** Presses one key after another. The first waits until the program has loaded all it loads after its first frame. */
    press: async (...presses: readonly string[]): Promise<void> => {
      if (!hasSettled) await terminal.settles();
      hasSettled = true;
      for (const press of presses) {
        child.write(press);
        await wait(betweenPresses);
      }
    },
    /** Writes at once, as a held key or a leaning glove does. */
    write: (text: string) => child.write(text),
    type: async (text: string): Promise<void> => {
      for (const character of text) {
        child.write(character);
        await wait(15);
      }
    },
    resize: async (toColumns: number, toRows: number): Promise<void> => {
      emulator.resize(toColumns, toRows);
      child.resize(toColumns, toRows);
      await wait(200);
    },
    /** Waits until something is so; a test that waits in vain fails with the screen in its message. */
    until,
    shows: (words: string) => until(`"${words}"`, () => screen().includes(words)),
    showsNot: (words: string) => until(`no "${words}"`, () => !screen().includes(words)),
    /** Waits until nothing has been written for a while; a count-down of seconds counts as nothing. */
    settles: async (): Promise<void> => {
      let before = -1;
      while (raw.length - before > aTick) {
        before = raw.length;
        await wait(500);
      }
    },
    kill: (signal: string) => child.kill(signal),
    /** The terminal's window is closed. */
    closes: () => (child as IPty & { readonly destroy: () => void }).destroy(),
    ends: async (): Promise<{ readonly code: number; readonly signal: number | undefined }> => {
      await until('the end of the program', () => ended !== null);
      if (ended === null) throw new Error('the program has not ended');
      return ended;
    },
  };
  onTestFinished(async () => {
    if (ended === null) child.kill('SIGKILL');
    // A worker that ends while a terminal's end is still to be told may break down.
    await terminal.ends();
    emulator.dispose();
  });
  return terminal;
}

export type OpenedTerminal = ReturnType<typeof openTerminal>;

export function temporaryFolder(): string {
  const folder = mkdtempSync(join(tmpdir(), 'recoat-terminal-'));
  onTestFinished(() => rmSync(folder, { recursive: true, force: true, maxRetries: 3 }));
  return join(folder, 'store');
}

/** What a shell on a plain machine would pass on, without what the test runner sets. */
export function cleanEnvironment(): Record<string, string> {
  const { PATH = '', HOME = '/', USER = '' } = process.env;
  return {
    PATH,
    HOME,
    USER,
    LANG: 'en_GB.UTF-8',
    TZ: 'Europe/London',
    TERM: 'xterm-256color',
    COLORTERM: 'truecolor',
  };
}
