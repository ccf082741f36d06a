import { spawn } from 'node:child_process';
import { existsSync, globSync } from 'node:fs';
import { mkdtemp, readFile, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { delimiter, join } from 'node:path';

/**
 * Everything that must hold, in one command: types, lint, arrows, unused code,
 * then the suites. Each check runs to its end whatever failed before it. The last
 * line counts the tests, and each other check that failed as one failed.
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
  const command = ['vitest', 'run', '--reporter=default', '--reporter=json'];
  command.push(`--outputFile.json=${reportFile}`, ...filters);
  console.log(`\n== ${name}`);
  const endedWell = await ended(start(command, { ...plainEnvironment, TZ: zone }, 'inherit'));
  const counts = await countTests(reportFile);
  // A suite that can't load, or an error outside any test, leaves no failed test behind.
  if (!endedWell && counts.failed === 0) counts.failed = 1;
  return counts;
}

/** @param {string} reportFile */
async function countTests(reportFile) {
  if (!existsSync(reportFile)) return { passed: 0, failed: 0, skipped: 0 };
  const report = JSON.parse(await readFile(reportFile, 'utf8'));
  return {
    passed: report.numPassedTests,
    failed: report.numFailedTests,
    skipped: report.numPendingTests + report.numTodoTests,
  };
}

const total = { passed: 0, failed: 0, skipped: 0 };
const failedSteps = [];

const checked = await Promise.all(checks.map(runCheck));
for (const [index, { name }] of checks.entries()) {
  if (checked[index] === false) {
    total.failed += 1;
    failedSteps.push(name);
  }
}

const reportFolder = await mkdtemp(join(tmpdir(), 'recoat-test-'));
try {
  for (const [index, run] of runs.entries()) {
    const counts = await runSuites(run, join(reportFolder, `${index}.json`));
    total.passed += counts.passed;
    total.failed += counts.failed;
    total.skipped += counts.skipped;
    if (counts.failed > 0) failedSteps.push(run.name);
  }
} finally {
  await rm(reportFolder, { recursive: true });
}

console.log('');
if (failedSteps.length > 0) console.log(`failed: ${failedSteps.join(', ')}`);
const skipped = total.skipped > 0 ? `, ${total.skipped} skipped` : '';
console.log(`${total.passed} passed, ${total.failed} failed${skipped}`);
// Nothing tested is nothing shown to work.
process.exitCode = total.failed > 0 || total.passed === 0 ? 1 : 0;
