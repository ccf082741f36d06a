import { join } from 'node:path';
import { runKeeper, type KeeperEnd } from '../shell/keeper/run-keeper.ts';
import { supervisors, unitText } from '../shell/keeper/units.ts';
import { nearest } from '../tracker/trade/index.ts';
import type { KeeperJson, UnitJson } from './json-shapes/index.ts';
import { failure, type Answer, type CommandFile, type Failure } from './line/command.ts';
import { storeFailure } from './line/look.ts';
import type { Room } from './line/room.ts';

export const keep: CommandFile = {
  options: [
    ['--stay', 'go on while nothing is running, for a supervisor of your own'],
    [
      '--unit <supervisor>',
      `print what starts it under ${supervisors.join(', ')}; installs nothing`,
    ],
  ],
  help: 'Pings while no screen is open, and stands aside while one is. Ends when nothing is to come. A screen starts one by itself where you want that: recoat settings keeper yes.',
  run: async (room, given) => {
    const unit = given.maybe('unit');
    if (unit !== null) return unitOf(room, unit);
    process.title = 'recoat keep';
    const ended = await runKeeper({
      world: room.world,
      folder: room.folder,
      stays: given.has('stay'),
      tell: (line) => room.world.print(line),
      untilTold,
    });
    return ended.because === 'store' ? storeFailure(ended.problem) : answer(ended.because);
  },
};

const endWords: Readonly<Record<Exclude<KeeperEnd['because'], 'store'>, string>> = {
  'nothing runs': 'Nothing is to come: the keeper ends.',
  'told to': 'The keeper ends. Nothing pings till a screen or a keeper is there again.',
  'another is there': 'Another keeper watches this folder already.',
};

const answer = (because: Exclude<KeeperEnd['because'], 'store'>): Answer => ({
  lines: () => [endWords[because]],
  json: (): KeeperJson => ({ ended: because }),
});

function unitOf({ world, folder }: Room, typed: string): Answer | Failure {
  const supervisor = supervisors.find((each) => each === typed.trim().toLowerCase());
  if (supervisor === undefined)
    return failure(
      'usage',
      `Not printed: no unit is known for "${typed}". Known: ${supervisors.join(', ')}.`,
      nearest(typed, supervisors),
    );
  const entry = join(world.packageFolder, 'dist', 'start.cjs');
  const text = unitText(supervisor, {
    node: process.execPath,
    entry,
    folder,
    user: windowsUserOf(world.env),
  });
  return {
    lines: () => text.trimEnd().split('\n'),
    json: (): UnitJson => ({ supervisor, text }),
  };
}

/** Windows names who is logged on in two variables. */
const windowsUserOf = ({ USERDOMAIN, USERNAME }: NodeJS.ProcessEnv): string | null =>
  USERNAME === undefined
    ? null
    : USERDOMAIN === undefined
      ? USERNAME
      : `${USERDOMAIN}\\${USERNAME}`;

/** Ends on the signals of a terminal, a supervisor and a closing window. */
function untilTold(end: () => void): () => void {
  const signals = ['SIGINT', 'SIGTERM', 'SIGHUP'] as const;
  // Not once: a listener that conf brings along sends the signal again, which must find this one still there.
  for (const signal of signals) process.on(signal, end);
  return () => {
    for (const signal of signals) process.off(signal, end);
  };
}
