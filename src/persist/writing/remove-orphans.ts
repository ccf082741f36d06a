import { readdirSync, rmSync } from 'node:fs';
import { join } from 'node:path';
import { partEnding } from '../file/durable.ts';
import { backupFolder, historyFolder } from '../folder/names.ts';

/** Temporary files as conf names them (ten digits of the time, six hexadecimal ones), and our own. */
const confOrphan = /^(?:bench|conditions|pings|settings|\d{4})\.json\.tmp-\d{10}[0-9a-f]{6}$/;

/** Takes away temporary files of processes that died while writing. The lock must be held: nobody is writing now. */
export function removeOrphans(folder: string): void {
  for (const place of [folder, join(folder, historyFolder), join(folder, backupFolder)]) {
    for (const name of namesIn(place)) {
      if (confOrphan.test(name) || name.endsWith(`.json${partEnding}`))
        rmSync(join(place, name), { force: true });
    }
  }
}

function namesIn(place: string): readonly string[] {
  try {
    return readdirSync(place);
  } catch {
    return [];
  }
}
