import type { World } from '../../shell/world.ts';
import { openDemoStore } from '../demo/demo-store.ts';
import { exitCodes } from './exit-codes.ts';
import { plainWordsAt } from './globals.ts';
import { demoPage } from './help.ts';

/**
 * `recoat demo`: the invented shop on the screen, or as text where no terminal is. `recoat demo hours`: a command on it.
 * Nothing of it is kept.
 *
 * @param words what stands beside `demo`
 * @param run runs a command line
 */
export async function runDemoLine(
  words: readonly string[],
  world: World,
  run: (words: readonly string[], world: World) => Promise<number>,
): Promise<number> {
  const isScreen = words.length === 0 && world.interactive;
  if (isScreen) return (await import('../demo/index.ts')).runDemo(world);
  if (plainWordsAt(words).length === 0 && words.includes('--help')) {
    world.print(demoPage());
    return exitCodes.done;
  }
  const demo = await openDemoStore(world);
  try {
    demo.store.close();
    return await run([...words, '--folder', demo.opened.folder], { ...world, interactive: false });
  } finally {
    await demo.throwAway();
  }
}
