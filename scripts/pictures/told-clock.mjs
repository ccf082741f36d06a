import { readFileSync } from 'node:fs';
import os from 'node:os';
import { syncBuiltinESMExports } from 'node:module';

/**
 * Preloaded into the program that is drawn: it takes the time from a file, so that a picture comes out the same whenever
 * it is made. TOLD_CLOCK names the file; in it stand milliseconds since 1970.
 */

const file = process.env['TOLD_CLOCK'] ?? '';
const told = () => Number(readFileSync(file, 'utf8'));
const begun = told();

Date.now = told;
// A machine that has been up for a day: without this, telling the time would look like setting the clock.
os.uptime = () => 86_400 + (told() - begun) / 1000;
syncBuiltinESMExports();
