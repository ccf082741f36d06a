import { spawn } from 'node:child_process';
import { existsSync, globSync } from 'node:fs';
import { mkdtemp, readFile, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { delimiter, join } from 'node:path';
import { reportVariable } from './suite-report.mjs';

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

/** The suites state their own language and colours. */
const plainEnvironment = { LANG: 'en_US.UTF-8', LC_ALL: 'en_US.UTF-8', NO_COLOR: undefined };

const binFolder = join(import.meta.dirname, '..', 'node_modules', '.bin');
const searchPath = [binFolder, process.env.PATH].join(delimiter);

/**
 * @param {string[]} command
 * @param {NodeJS.ProcessEnv} extraEnvironment
 * @param {'inherit' | 'pipe'} output
 */
const start = ([program = '', ...words], extraEnvironment, output) =>
  spawn(program, words, {
    stdio: ['ignore', output, output],
    env: { ...process.env, PATH: searchPath, ...extraEnvironment },
    shell: process.platform === 'win32',
  });

/**
 * @param {import('node:child_process').ChildProcess} child
 * @returns {Promise<boolean>} whether it ended well
 */
const ended = (child) =>
  new Promise((resolve) => {
    child.on('error', (error) => {
      console.error(error.message);
      resolve(false);
    });
    child.on('close', (code) => resolve(code === 0));
  });

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

/**
 * @param {{name: string, zone: string, filters: string[]}} run
 * @param {string} reportFile
 */
async function runSuites({ name, zone, filters }, reportFile) {
  const reporters = ['default', join(import.meta.dirname, 'suite-report.mjs')];
  const command = ['vitest', 'run', ...reporters.map((reporter) => `--reporter=${reporter}`)];
  console.log(`\n== ${name}`);
  const environment = { ...plainEnvironment, TZ: zone, [reportVariable]: reportFile };
  const endedWell = await ended(start([...command, ...filters], environment, 'inherit'));
  /** @type {import('./suite-report.mjs').Report} */
  const report = existsSync(reportFile)
    ? JSON.parse(await readFile(reportFile, 'utf8'))
    : { passed: 0, failed: 0, skipped: 0, failures: [], unsteady: [] };
  // A suite that can't load, or an error outside any test, leaves no failed test behind.
  if (!endedWell && report.failed === 0) report.failed = 1;
  if (!endedWell && report.failures.length === 0)
    report.failures.push({ where: 'vitest', why: 'ended badly and left no reason; see above' });
  return report;
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
  for (const [index, run] of runs.entries()) {
    const report = await runSuites(run, join(reportFolder, `${index}.json`));
    total.passed += report.passed;
    total.failed += report.failed;
    total.skipped += report.skipped;
    for (const { where, why } of report.unsteady)
      remarks.push(`passed only when it was run again: ${run.name}: ${where}\n${why}`);
    for (const { where, why } of report.failures)
      remarks.push(`failed: ${run.name}: ${where}\n${why}`);
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
