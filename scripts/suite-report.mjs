import { writeFileSync } from 'node:fs';
import { join, relative } from 'node:path';

/**
 * @typedef {object} Report what a run of the suites came to
 * @property {number} passed tests
 * @property {number} failed tests, those that never ended among them
 * @property {number} skipped tests, those of a group that could not be prepared among them
 * @property {Failure[]} failures of tests, groups, files and errors outside of any
 */

/**
 * @typedef {object} Failure
 * @property {string} where
 * @property {string} why
 * @property {string[]} files those in which it happened, as far as it is known
 * @property {boolean} brokeOff whether what ran the tests broke down, so that no test said that anything is wrong
 */

/** @typedef {import('vitest').SerializedError} SerializedError */

const terminals = join('tests', 'terminal');

/** Where the reporter leaves its report, for what started the run. */
export const reportVariable = 'SUITE_REPORT';

/**
 * Vitest's own report in JSON leaves out errors of a group and errors outside of any
 * test, so that a run could fail with nothing named that failed.
 */
export default class SuiteReporter {
  /**
   * @param {readonly import('vitest/node').TestModule[]} modules
   * @param {readonly SerializedError[]} errorsOutside
   */
  onTestRunEnd(modules, errorsOutside) {
    const file = process.env[reportVariable];
    if (file === undefined) throw new Error(`${reportVariable} names no file for the report`);
    const reports = modules.map(reportOf);
    /** @param {'passed' | 'failed' | 'skipped'} count */
    const sum = (count) => reports.reduce((total, report) => total + report[count], 0);
    /** @type {Report} */
    const report = {
      passed: sum('passed'),
      failed: sum('failed'),
      skipped: sum('skipped'),
      failures: [...reports.flatMap(({ failures }) => failures), ...errorsOutside.map(outside)],
    };
    writeFileSync(file, JSON.stringify(report));
  }
}

/**
 * @param {import('vitest/node').TestModule} module
 * @returns {Report}
 */
function reportOf(module) {
  const file = module.relativeModuleId;
  /** @type {Report} */
  const report = { passed: 0, failed: 0, skipped: 0, failures: [] };
  /** @param {string} name @param {readonly SerializedError[]} errors */
  const add = (name, errors) => {
    const where = name === '' ? file : `${file} > ${name}`;
    for (const error of errors)
      report.failures.push({ where, why: told(error), files: [file], brokeOff: false });
  };
  add('', module.errors());
  for (const suite of module.children.allSuites()) add(suite.fullName, suite.errors());
  for (const test of module.children.allTests()) {
    const { state, errors = [] } = test.result();
    if (state === 'passed') report.passed += 1;
    else if (state === 'skipped') report.skipped += 1;
    else report.failed += 1;
    if (state === 'failed') add(test.fullName, errors);
    if (state === 'pending') {
      const where = `${file} > ${test.fullName}`;
      const why = 'never came to its end';
      report.failures.push({ where, why, files: [file], brokeOff: true });
    }
  }
  return report;
}

/**
 * @param {SerializedError} error one that no test, group or file is known to have thrown, as that of a worker that broke down
 * @returns {Failure}
 */
function outside(error) {
  const why = told(error);
  const [, named = ''] = /while running test files? (.+?)(?:\n|$)/.exec(why) ?? [];
  const known = error['VITEST_TEST_PATH'];
  const paths = typeof known === 'string' ? [known] : named.split(', ').filter(Boolean);
  const files = paths.map((path) => relative(process.cwd(), path));
  // What a pseudo-terminal throws when its process dies comes from no code of ours.
  const brokeOff =
    named !== '' || (files.length > 0 && files.every((file) => file.startsWith(terminals)));
  return { where: 'outside of any test', why, files, brokeOff };
}

/**
 * @param {SerializedError} error
 * @returns {string} its message and the places of our own that it came by, and those of its causes
 */
function told({ message, stack = '', cause }) {
  const places = stack.split('\n').filter((line) => /^\s+at /.test(line));
  const ours = places.filter((line) => !/node_modules|new Promise/.test(line));
  return [message, ...ours, ...(cause ? [`because: ${told(cause)}`] : [])].join('\n');
}
