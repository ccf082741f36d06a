import { isRunning, readKeeperMark } from '../../persist/presence/keeper-mark.ts';
import type { Room } from './room.ts';

/** Says so where a keeper died without ending in order: since then nothing pings. */
export function tellOfLostKeeper({ folder, tell }: Room): void {
  const mark = readKeeperMark(folder);
  if (mark === null || isRunning(mark)) return;
  tell(
    `The keeper (process ${mark.pid}) was ended from outside: nothing pings while no screen is open. Start one: recoat keep`,
  );
}
