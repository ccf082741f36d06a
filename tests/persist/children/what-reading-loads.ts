/** `node what-reading-loads.ts FOLDER`: reads a store and tells, as JSON, how many facts and which modules that took. */
import { registerHooks } from 'node:module';

const loaded: string[] = [];
registerHooks({
  load(url, context, nextLoad) {
    loaded.push(url.replace(/^.*\/src\//, ''));
    return nextLoad(url, context);
  },
});
const { openStore } = await import('../../../src/persist/open-store.ts');
const opened = await openStore(process.argv[2] ?? '', {
  clock: { now: () => 0, today: () => '2026-11-24' },
});
console.log(JSON.stringify({ facts: opened.ok ? opened.value.bench.length : opened, loaded }));
