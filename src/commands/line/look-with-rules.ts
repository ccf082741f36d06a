import { tradeRulesOf } from '../../shell/trade-rules.ts';
import type { Failure } from './command.ts';
import { lookAt, openToRead, type Look } from './look.ts';
import type { Room } from './room.ts';

/** The state of the shop with the rules of the trade, for what says cautions. Most commands don't, and are quicker without. */
export async function lookWithRules(room: Room): Promise<Look | Failure> {
  const [opened, rules] = await Promise.all([openToRead(room), tradeRulesOf(room.world)]);
  return 'failed' in opened ? opened : lookAt(room, opened, opened.bench, rules);
}
