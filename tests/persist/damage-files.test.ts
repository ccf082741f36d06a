import { expect, it } from 'vitest';
import { damageFiles } from './damage-files.ts';
import { newFolder } from './places.ts';

it('takes no damaged file for a good one, whatever was done to it, and loses the last change at most', async () => {
  const count = await damageFiles(newFolder(), { damages: 60, seed: 11 });
  expect(count).toMatchObject({ damages: 60, unnoticed: 0, lost: 0 });
  expect(count.named).toBeGreaterThan(40);
});
