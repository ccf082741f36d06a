import { realpath } from 'node:fs/promises';
import { join } from 'node:path';
import { readRules, rulesBeside } from '../persist/schedules/index.ts';
import type { TradeRules } from '../tracker/trade/index.ts';
import { scheduleFolders } from './port.ts';
import type { World } from './world.ts';

const known = new Map<string, Promise<TradeRules>>();

/** What may go over what, and what to be careful about: read once, whoever asks. */
export async function tradeRulesOf(world: Pick<World, 'packageFolder'>): Promise<TradeRules> {
  const folders = rulesBeside(scheduleFolders(world, null));
  const named = join(folders.templates, 'rules');
  const place = await realpath(named).catch(() => named);
  const read = known.get(place) ?? readRules(folders).then(({ rules }) => rules);
  known.set(place, read);
  return read;
}
