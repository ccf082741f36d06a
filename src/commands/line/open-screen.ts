import { failure, isFailure } from './command.ts';
import { openToRead } from './look.ts';
import { printResult } from './print.ts';
import type { Room } from './room.ts';

/** The screens on a terminal, until they are left. @returns the exit code. */
export async function openScreen(room: Room): Promise<number> {
  const { world } = room;
  if (room.zone !== null)
    return printResult(
      failure(
        'usage',
        `Not opened: the screen tells the shop's time. To change that: recoat settings zone ${room.zone}`,
      ),
      false,
      world,
    );
  // The screen says itself what was noticed.
  const opened = await openToRead({ ...room, mustHaveStore: false, tell: () => undefined });
  if (isFailure(opened)) return printResult(opened, false, world);
  const { runScreen } = await import('../../shell/screen.tsx');
  return runScreen({
    world,
    opened,
    demo: async () => (await import('../demo/index.ts')).runDemo(world),
  });
}
