import { existsSync } from 'node:fs';
import { readFile, rm } from 'node:fs/promises';
import { join } from 'node:path';
import { ended, start } from './child.mjs';
import { reportVariable } from './suite-report.mjs';

/** @typedef {import('./suite-report.mjs').Report} Report */
/** @typedef {import('./suite-report.mjs').Failure} Failure */
/** @typedef {{name: string, zone: string, filters: string[]}} Run */

/** The suites state their own language and colours. */
const plainEnvironment = { LANG: 'en_US.UTF-8', LC_ALL: 'en_US.UTF-8', NO_COLOR: undefined };

/** More files than these are no accident. */
const mostAgain = 3;

/**
 * Runs suites. Where a worker broke down, its files are run again once, alone: nothing was found
 * wrong, nor right. A test that failed has failed.
 * @param {Run} run
 * @param {string} folder for reports
 * @returns {Promise<Report & {again: Failure[]}>} `again`: what failed and then passed
 */
export async function runSuites(run, folder) {
  const { isWell, report } = await runOnce(run, join(folder, 'first.json'));
  if (isWell) return { ...report, again: [] };
  const filters = filesToRunAgain(report);
  if (filters.length > 0) {
    const again = { ...run, name: `${run.name}, again`, filters };
    const { passed, failed, skipped, failures } = report;
    if ((await runOnce(again, join(folder, 'again.json'))).isWell)
      return { passed: passed + failed, failed: 0, skipped, failures: [], again: failures };
  }
  // A suite that can't load, or an error outside any test, leaves no failed test behind.
  return { ...report, failed: Math.max(report.failed, 1), again: [] };
}

/** @param {Report} report */
function filesToRunAgain({ failures }) {
  const brokeOff = failures.every((failure) => failure.brokeOff && failure.files.length > 0);
  const files = [...new Set(failures.flatMap((failure) => failure.files))];
  return brokeOff && files.length <= mostAgain ? files : [];
}

/**
 * @param {Run} run
 * @param {string} reportFile
 */
async function runOnce({ name, zone, filters }, reportFile) {
  const reporters = ['default', join(import.meta.dirname, 'suite-report.mjs')];
  const command = ['vitest', 'run', ...reporters.map((reporter) => `--reporter=${reporter}`)];
  console.log(`\n== ${name}`);
  const environment = { ...plainEnvironment, TZ: zone, [reportVariable]: reportFile };
  await rm(reportFile, { force: true });
  const isWell = await ended(start([...command, ...filters], environment, 'inherit'));
  /** @type {Report} */
  const report = existsSync(reportFile)
    ? JSON.parse(await readFile(reportFile, 'utf8'))
    : { passed: 0, failed: 0, skipped: 0, failures: [] };
  if (!isWell && report.failures.length === 0) {
    const why = 'ended badly and left no reason; see above';
    report.failures.push({ where: 'vitest', why, files: [], brokeOff: false });
  }
  return { isWell, report };
}
