import { spawn } from 'node:child_process';
import { delimiter, join } from 'node:path';

const binFolder = join(import.meta.dirname, '..', 'node_modules', '.bin');
const searchPath = [binFolder, process.env.PATH].join(delimiter);

/**
 * Starts a program of the project's dependencies.
 * @param {string[]} command
 * @param {NodeJS.ProcessEnv} extraEnvironment
 * @param {'inherit' | 'pipe'} output
 */
export const start = ([program = '', ...words], extraEnvironment, output) =>
  spawn(program, words, {
    stdio: ['ignore', output, output],
    env: { ...process.env, PATH: searchPath, ...extraEnvironment },
    shell: process.platform === 'win32',
  });

/**
 * @param {import('node:child_process').ChildProcess} child
 * @returns {Promise<boolean>} whether it ended well
 */
export const ended = (child) =>
  new Promise((resolve) => {
    child.on('error', (error) => {
      console.error(error.message);
      resolve(false);
    });
    child.on('close', (code) => resolve(code === 0));
  });
