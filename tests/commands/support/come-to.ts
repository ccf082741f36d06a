import type { StepJson } from '../../../src/commands/json-shapes/index.ts';
import type { Shop } from './shop.ts';

/** Skips every step of piece 1 before the first of that class, so that it is next; its trial, where it has one, too. */
export async function comeTo(shop: Shop, stepClass: string): Promise<StepJson> {
  const { steps } = await shop.json('steps', '1');
  const at = steps.findIndex((step) => step.stepClass === stepClass && step.state === 'to do');
  for (const { id, state } of steps.slice(0, at))
    if (state !== 'skipped') await shop.does('skip-step', '1', id);
  const found = steps[at];
  if (found === undefined) throw new Error(`no step of class ${stepClass}`);
  if (found.locked !== null) {
    await shop.does('pick-up', '1', '--anyway', 'tried on a board');
    await shop.does('put-down', '1');
  }
  return found;
}
