import { presentAsKeeper, presentAsScreen } from '../../../src/persist/presence/presence.ts';

/** Is there as a screen or as the keeper until it is killed; answers whether it could be. */
const [as, folder = ''] = process.argv.slice(2);
const presence = as === 'screen' ? presentAsScreen(folder) : presentAsKeeper(folder);
process.stdout.write(`${JSON.stringify(presence !== null)}\n`);
setInterval(() => {}, 60_000);
