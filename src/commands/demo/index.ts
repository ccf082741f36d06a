import type { World } from '../../shell/world.ts';
import { openDemoStore } from './demo-store.ts';

/** `recoat demo`: the invented shop on the screen; nothing in it is kept. */
export async function runDemo(world: World): Promise<number> {
  const demo = await openDemoStore(world);
  try {
    const { runScreen } = await import('../../shell/screen.tsx');
    return await runScreen({ world, opened: demo.opened, store: demo.store });
  } finally {
    await demo.throwAway();
  }
}
