import { globSync } from 'node:fs';
import { mkdtemp, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { ended, start } from './child.mjs';
import { runSuites } from './run-suites.mjs';

/**
 * Everything that must hold, in one command: types, lint, arrows, unused code,
 * then the suites. Each check runs to its end whatever failed before it. The last
 * lines say again what failed, as it may be thousands of lines above; the very last
 * counts the tests, and each other check that failed as one failed.
 */

const checks = [
  { name: 'types', command: ['tsc', '--noEmit'] },
  { name: 'lint', command: ['eslint', '.'] },
  { name: 'arrows', command: ['depcruise', '--progress', 'none', 'src', 'scripts', 'tests'] },
  { name: 'unused code', command: ['knip', '--no-progress'] },
];

/** What works with days and hours runs again where no clock ever changes. */
const timeDependent =
  'tests/{tracker/{time,windows,bench,estimate},commands,persist,shell,views}/**/*.test.{ts,tsx}';
/** Locks, children and their deaths take long and are the same in every zone. */
const alikeEverywhere = [
  'tests/persist/{lock,killed-writers}.test.ts',
  'tests/shell/ping/*.test.ts',
];

const runs = [
  { name: 'tests, New York', zone: 'America/New_York', filters: [] },
  {
    name: 'time-dependent tests, UTC',
    zone: 'UTC',
    filters: ['--project=units', ...globSync(timeDependent, { exclude: alikeEverywhere })],
  },
];

/**
 * Checks go side by side; each tells what it found when it has ended.
 * @param {{name: string, command: string[]}} check
 * @returns {Promise<boolean>} whether it ended well
 */
async function runCheck({ name, command }) {
  const child = start(command, {}, 'pipe');
  let told = '';
  for (const stream of [child.stdout, child.stderr])
    stream?.setEncoding('utf8').on('data', (part) => (told += part));
  const isWell = await ended(child);
  console.log(`\n== ${name}\n${told}`.trimEnd());
  return isWell;
}

const total = { passed: 0, failed: 0, skipped: 0 };
/** @type {string[]} */
const remarks = [];

const checked = await Promise.all(checks.map(runCheck));
for (const [index, { name }] of checks.entries()) {
  if (checked[index] === false) {
    total.failed += 1;
    remarks.push(`failed: ${name}`);
  }
}

const reportFolder = await mkdtemp(join(tmpdir(), 'recoat-test-'));
try {
  for (const run of runs) {
    const { passed, failed, skipped, failures, again } = await runSuites(run, reportFolder);
    total.passed += passed;
    total.failed += failed;
    total.skipped += skipped;
    for (const { where, why } of again)
      remarks.push(`passed when it was run again: ${run.name}: ${where}\n${why}`);
    for (const { where, why } of failures) remarks.push(`failed: ${run.name}: ${where}\n${why}`);
  }
} finally {
  await rm(reportFolder, { recursive: true });
}

console.log('');
for (const remark of remarks) console.log(`${remark}\n`);
const skipped = total.skipped > 0 ? `, ${total.skipped} skipped` : '';
console.log(`${total.passed} passed, ${total.failed} failed${skipped}`);
// Nothing tested is nothing shown to work.
process.exitCode = total.failed > 0 || total.passed === 0 ? 1 : 0;
