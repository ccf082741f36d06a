import { dataFolder } from '../../persist/index.ts';
import { clockReading } from '../../shell/clock.ts';
import type { World } from '../../shell/world.ts';
import { readZone } from '../read/read-zone.ts';
import { askOnTerminal } from './ask.ts';
import { isFailure } from './command.ts';
import { exitCodes } from './exit-codes.ts';
import type { FoundCommand } from './find-command.ts';
import { commandPage } from './help.ts';
import { openScreen } from './open-screen.ts';
import { parseWords } from './parse.ts';
import { printNotice, printResult } from './print.ts';
import type { Room } from './room.ts';

export type RunOptions = {
  readonly world: World;
  readonly asJson: boolean;
  readonly ask: Room['ask'] | undefined;
};

/** Reads the words of one command, does it, and prints what comes of it. @returns the exit code. */
export async function runCommand(
  { name, entry, words }: FoundCommand,
  { world, asJson, ask }: RunOptions,
): Promise<number> {
  const file = await entry.load();
  const given = parseWords(name, file, words);
  if (given === 'help') {
    world.print(commandPage(name, entry.summary, file));
    return exitCodes.done;
  }
  if (isFailure(given)) return printResult(given, asJson, world);
  const typedZone = given.maybe('zone');
  const zone = typedZone === null ? null : readZone(typedZone);
  if (zone !== null && isFailure(zone)) return printResult(zone, asJson, world);
  const clock = clockReading(world.clock);
  const room: Room = {
    world,
    folder: dataFolder({
      option: given.maybe('folder') ?? undefined,
      env: world.env,
      platform: world.platform,
      home: world.home,
      from: world.cwd,
    }),
    mustHaveStore: given.maybe('folder') !== null && file.beginsStore !== true,
    zone: zone?.zone ?? null,
    now: clock.told,
    clock,
    tell: (notice) => printNotice(notice, world),
    get ask() {
      if (ask !== undefined) return ask;
      return world.interactive ? askOnTerminal : null;
    },
  };
  if (name === '' && !asJson && world.interactive) return openScreen(room);
  return printResult(await file.run(room, given), asJson, world);
}
