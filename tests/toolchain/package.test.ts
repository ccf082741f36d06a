import { spawnSync } from 'node:child_process';
import { mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { delimiter, join } from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import manifest from '../../package.json' with { type: 'json' };

const packageRoot = join(import.meta.dirname, '..', '..');
const noNetwork =
  /ENOTCACHED|ENOTFOUND|EAI_AGAIN|ECONN|ENETUNREACH|EHOSTUNREACH|ETIMEDOUT|ERR_SOCKET|E40[13]|E50\d/;

let folder: string;
beforeAll(() => {
  folder = mkdtempSync(join(tmpdir(), 'recoat-package-'));
});
afterAll(() => rmSync(folder, { recursive: true, force: true }));

/** Only this Node, and nothing of the checkout, on the search path. */
function cleanEnvironment(): NodeJS.ProcessEnv {
  const outside = (process.env['PATH'] ?? '')
    .split(delimiter)
    .filter((part) => !part.includes('node_modules'));
  const kept = Object.entries(process.env).filter(([name]) => !/^npm_/i.test(name));
  return {
    ...Object.fromEntries(kept),
    PATH: [join(process.execPath, '..'), ...outside].join(delimiter),
    HOME: folder,
  };
}

function npm(words: string[], cwd: string, environment = process.env) {
  return spawnSync('npm', words, {
    cwd,
    encoding: 'utf8',
    env: environment,
    shell: process.platform === 'win32',
  });
}

describe('the package', () => {
  it('holds the built program and its papers, and no sources', () => {
    const run = npm(
      ['pack', '--ignore-scripts', '--json', '--pack-destination', folder],
      packageRoot,
    );
    expect(run.stderr + run.stdout).not.toMatch(/npm error/);
    const [{ files }] = JSON.parse(run.stdout) as [{ files: { path: string }[] }];
    const paths = files.map(({ path }) => path);
    expect(paths).toEqual(
      expect.arrayContaining([
        'package.json',
        'LICENSE',
        'dist/start.cjs',
        'dist/main.cjs',
        'dist/THIRD-PARTY-NOTICES.txt',
      ]),
    );
    const topLevel = new Set(paths.map((path) => path.split('/')[0]));
    expect(
      [...topLevel].filter((name) => !['package.json', ...manifest.files].includes(name ?? '')),
    ).toEqual([]);
  });

  it('installs in an empty folder and runs there', (context) => {
    const tarball = join(folder, `recoat-${manifest.version}.tgz`);
    const home = join(folder, 'installed');
    const cache = npm(['config', 'get', 'cache'], packageRoot).stdout.trim();
    const install = npm(
      [
        'install',
        '--prefix',
        home,
        '--cache',
        cache,
        '--ignore-scripts',
        '--prefer-offline',
        '--no-audit',
        '--no-fund',
        '--fetch-retries=0',
        tarball,
      ],
      folder,
      cleanEnvironment(),
    );
    if (install.status !== 0 && noNetwork.test(install.stderr)) {
      return context.skip(
        'the packages it depends on are not cached and the registry is out of reach',
      );
    }
    expect(install.stderr).not.toMatch(/npm error/);
    const program = join(home, 'node_modules', 'recoat', 'dist', 'start.cjs');
    const run = spawnSync(process.execPath, [program, '--version'], {
      cwd: folder,
      encoding: 'utf8',
      env: cleanEnvironment(),
    });
    expect(run).toMatchObject({ status: 0, stdout: `${manifest.version}\n`, stderr: '' });
    // Nothing but what the package names is there: whatever a part of the program still reaches for would be missing.
    // A thread's own file gets as far as asking for what the thread was given.
    const parts = spawnSync(
      process.execPath,
      [
        '-e',
        `for (const part of require('fs').readdirSync('.'))
          if (part.endsWith('.cjs') && !/^(start|main)/.test(part))
            try { console.log(Object.keys(require('./' + part)).length > 0); }
            catch (error) { if (!/workerData/.test(error.message) || !/worker/.test(part)) throw error; console.log(true); }`,
      ],
      { cwd: join(program, '..'), encoding: 'utf8', env: cleanEnvironment() },
    );
    expect(parts).toMatchObject({ status: 0, stderr: '' });
    expect(parts.stdout.split('\n').length).toBeGreaterThan(10);
  });
});

describe('package-lock.json', () => {
  it('names no registry, so that everybody uses their own', () => {
    const lock = JSON.parse(readFileSync(join(packageRoot, 'package-lock.json'), 'utf8')) as {
      packages: Record<string, { resolved?: string; integrity?: string }>;
    };
    const others = Object.entries(lock.packages).filter(([path]) => path !== '');
    expect(others.length).toBeGreaterThan(50);
    expect(others.filter(([, entry]) => entry.resolved !== undefined)).toEqual([]);
    expect(others.filter(([, entry]) => entry.integrity === undefined)).toEqual([]);
  });
});
