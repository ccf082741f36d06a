import { readFileSync } from 'node:fs';
import { homedir } from 'node:os';
import { join } from 'node:path';
import { runCommandLine } from './commands/index.ts';
import { exitCodes } from './commands/line/exit-codes.ts';
import { brokeDownWords } from './shell/broke-down.ts';
import { systemClock } from './shell/clock.ts';
import { newId } from './shell/ids.ts';
import { localeOf } from './shell/shop.ts';
import type { World } from './shell/world.ts';
import { writeOut } from './shell/write-out.ts';

/** The package's own folder; dist/ and src/ both lie one folder below it. */
const packageFolder = join(import.meta.dirname, '..');

/**
 * Does what the command line asks for.
 *
 * @param keepCompiledCode for whoever won't end by itself
 */
export function start(keepCompiledCode: () => void): void {
  const world: World = {
    clock: systemClock(),
    newId,
    env: process.env,
    platform: process.platform,
    home: homedir(),
    cwd: process.cwd(),
    here: {
      zone: 'auto',
      locale: localeOf(process.env),
    },
    packageFolder,
    get version() {
      const manifest = JSON.parse(readFileSync(join(packageFolder, 'package.json'), 'utf8')) as {
        version: string;
      };
      return manifest.version;
    },
    // Asked for only where it matters: looking at the streams makes them.
    get interactive() {
      return process.stdin.isTTY && process.stdout.isTTY && process.env['TERM'] !== 'dumb';
    },
    get columns() {
      return process.stdout.isTTY ? process.stdout.columns : null;
    },
    get progress() {
      if (!process.stderr.isTTY || process.env['TERM'] === 'dumb') return null;
      return (words: string) => void process.stderr.write(`\r\u001b[K${words}`);
    },
    print: (text) => writeOut(1, text, () => process.stdout),
    printError: (text) => writeOut(2, text, () => process.stderr),
    keepCompiledCode,
  };

  runCommandLine(process.argv.slice(2), world).then(
    (code) => {
      process.exitCode = code;
    },
    (thrown: unknown) => {
      world.printError(brokeDownWords(thrown));
      process.exitCode = exitCodes.broke;
    },
  );
}
