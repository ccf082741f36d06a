import type { World } from '../shell/world.ts';
import { isFailure } from './line/command.ts';
import { exitCodes } from './line/exit-codes.ts';
import { findCommand } from './line/find-command.ts';
import { plainWordsAt } from './line/globals.ts';
import { helpText } from './line/help.ts';
import { printResult } from './line/print.ts';
import type { Room } from './line/room.ts';
import { runCommand } from './line/run-command.ts';

/** What a command line may be given beside the world, for tests. */
export type LineOptions = { readonly ask?: Room['ask'] };

/** Runs one command line. @returns the exit code: one of `exitCodes`, or the screen's own. */
export async function runCommandLine(
  args: readonly string[],
  world: World,
  { ask }: LineOptions = {},
): Promise<number> {
  const asJson = args.includes('--json');
  const [first = -1] = plainWordsAt(args);
  if (args[first] === 'demo')
    return (await import('./line/demo-line.ts')).runDemoLine(
      args.toSpliced(first, 1),
      world,
      (words, inDemo) => runCommandLine(words, inDemo, { ask: null }),
    );
  const found = findCommand(args);
  if (found === 'version') {
    world.print(world.version);
    return exitCodes.done;
  }
  if (found === 'help') {
    world.print(helpText());
    return exitCodes.done;
  }
  if (isFailure(found)) return printResult(found, asJson, world);
  return runCommand(found, { world, asJson, ask });
}
