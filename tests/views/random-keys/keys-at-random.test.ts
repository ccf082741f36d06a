import { join } from 'node:path';
import { expect, it } from 'vitest';
import { keysAtRandom } from './keys-at-random.ts';

const packageFolder = join(import.meta.dirname, '..', '..', '..');

it('takes any keys at any size, and folds to the same bench after every replay', async () => {
  const outcome = await keysAtRandom({ keys: 3000, seed: 1, packageFolder });
  expect(outcome.keys).toBe(3000);
  expect(outcome.frames).toBeGreaterThanOrEqual(6000);
  expect(outcome.facts).toBeGreaterThan(50);
  expect(outcome.heard).toEqual(expect.arrayContaining(['read', 'review', 'tried']));
  // Chance finds its way into most of them.
  expect(outcome.screens.length).toBeGreaterThan(10);
}, 120_000);
