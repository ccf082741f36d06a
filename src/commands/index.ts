import { dataFolder, openStore } from '../persist/index.ts';
import type { World } from '../shell/world.ts';

/** Runs one command line. @returns the exit code. */
export async function runCommandLine(args: readonly string[], world: World): Promise<number> {
  if (args[0] === '--version') {
    world.print(world.version);
    return 0;
  }
  const folder = dataFolder({
    env: world.env,
    platform: world.platform,
    home: world.home,
    from: world.cwd,
  });
  const opened = await openStore(folder, {
    clock: {
      now: world.clock.now,
      today: () => new Date(world.clock.now()).toISOString().slice(0, 10),
    },
  });
  if (!opened.ok) {
    world.printError(`${opened.problem.says} ${opened.problem.todo}`);
    return 1;
  }
  const { runScreen } = await import('../shell/screen.tsx');
  return runScreen({ world, opened: opened.value });
}
