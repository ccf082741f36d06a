import { writeFileSync } from 'node:fs';

/**
 * @typedef {object} Report what a run of the suites came to
 * @property {number} passed tests
 * @property {number} failed tests
 * @property {number} skipped tests, those of a group that could not be prepared among them
 * @property {Failure[]} failures tests, groups, files and errors outside of any
 * @property {Failure[]} unsteady tests that passed only when they were run again
 */

/** @typedef {{where: string, why: string}} Failure */

/** Where the reporter leaves its report, for what started the run. */
export const reportVariable = 'SUITE_REPORT';

/**
 * Vitest's own report in JSON leaves out errors of a group and errors outside of any
 * test, so that a run could fail with nothing named that failed.
 */
export default class SuiteReporter {
  /**
   * @param {readonly import('vitest/node').TestModule[]} modules
   * @param {readonly import('vitest').SerializedError[]} errorsOutside
   */
  onTestRunEnd(modules, errorsOutside) {
    const file = process.env[reportVariable];
    if (file === undefined) throw new Error(`${reportVariable} names no file for the report`);
    writeFileSync(file, JSON.stringify(reportOf(modules, errorsOutside)));
  }
}

/**
 * @param {readonly import('vitest/node').TestModule[]} modules
 * @param {readonly import('vitest').SerializedError[]} errorsOutside
 * @returns {Report}
 */
function reportOf(modules, errorsOutside) {
  /** @type {Report} */
  const report = { passed: 0, failed: 0, skipped: 0, failures: [], unsteady: [] };
  /** @param {string} where @param {readonly import('vitest').SerializedError[]} errors */
  const add = (where, errors, failures = report.failures) => {
    // What fails twice for one cause is said once.
    for (const why of new Set(errors.map(told))) failures.push({ where, why });
  };
  for (const module of modules) {
    const file = module.relativeModuleId;
    add(file, module.errors());
    for (const suite of module.children.allSuites())
      add(`${file} > ${suite.fullName}`, suite.errors());
    for (const test of module.children.allTests()) {
      const { state, errors = [] } = test.result();
      if (state === 'passed') report.passed += 1;
      else if (state === 'skipped') report.skipped += 1;
      else report.failed += 1;
      const where = `${file} > ${test.fullName}`;
      if (state === 'passed') add(where, errors, report.unsteady);
      if (state === 'failed') add(where, errors);
      if (state === 'pending') report.failures.push({ where, why: 'never came to its end' });
    }
  }
  add('outside of any test', errorsOutside);
  return report;
}

/**
 * @param {import('vitest').SerializedError} error
 * @returns {string} its message and the places of our own that it came by
 */
function told({ message, stack = '' }) {
  const places = stack.split('\n').filter((line) => /^\s+at /.test(line));
  return [message, ...places.filter((line) => !/node_modules|new Promise/.test(line))].join('\n');
}
