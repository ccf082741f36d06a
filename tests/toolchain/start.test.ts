import { spawnSync } from 'node:child_process';
import { existsSync, readFileSync } from 'node:fs';
import { delimiter, join } from 'node:path';
import { parse } from 'acorn';
import { describe, expect, it } from 'vitest';
import manifest from '../../package.json' with { type: 'json' };

const packageRoot = join(import.meta.dirname, '..', '..');
const startFile = join(packageRoot, 'src', 'start.cjs');
const source = readFileSync(startFile, 'utf8');

function nodeVersion(program: string): number[] {
  const { stdout } = spawnSync(program, ['--version'], { encoding: 'utf8' });
  return stdout.trim().replace(/^v/, '').split('.').map(Number);
}

/** A Node of this machine that is older than the program needs. */
function olderNode(): string | undefined {
  const folders = ['/usr/bin', ...(process.env['PATH'] ?? '').split(delimiter)];
  return folders
    .filter((folder) => !folder.includes('node_modules'))
    .map((folder) => join(folder, process.platform === 'win32' ? 'node.exe' : 'node'))
    .filter((program) => existsSync(program))
    .find((program) => {
      const [major = 0, minor = 0] = nodeVersion(program);
      return major < 22 || (major === 22 && minor < 13);
    });
}

describe('the start file', () => {
  it('can be parsed by every Node (ECMAScript 5.1)', () => {
    const tree = parse(source, { ecmaVersion: 5, allowHashBang: true, sourceType: 'script' });
    expect(tree.body.length).toBeGreaterThan(0);
  });

  it('asks for the version that package.json names', () => {
    const major = /NEEDED_MAJOR = (\d+)/.exec(source)?.[1];
    const minor = /NEEDED_MINOR = (\d+)/.exec(source)?.[1];
    expect(`>=${major}.${minor}`).toBe(manifest.engines.node);
  });

  it.each(['0.12.18', '18.20.4', '22.12.0'])('refuses Node %s in one line', (version) => {
    // Stands in for an old Node: only the version that the file sees is changed.
    const program = `
      Object.defineProperty(process.versions, 'node', { value: '${version}' });
      require(${JSON.stringify(startFile)});`;
    const run = spawnSync(process.execPath, ['-e', program], { encoding: 'utf8' });
    expect(run.status).toBe(1);
    expect(run.stdout).toBe('');
    expect(run.stderr).toMatch(/^recoat needs Node\.js 22\.13 or newer and found [^\n]*\n$/);
    expect(run.stderr).toContain(version);
  });

  it('is refused by an older Node of this machine', (context) => {
    const program = olderNode();
    if (program === undefined) return context.skip('no older Node on this machine');
    const run = spawnSync(program, [startFile], { encoding: 'utf8' });
    expect(run.status).toBe(1);
    expect(run.stderr).toMatch(/^recoat needs Node\.js 22\.13 or newer and found [^\n]*\n$/);
  });

  it('runs the built program', () => {
    const program = join(packageRoot, 'dist', 'start.cjs');
    const run = spawnSync(process.execPath, [program, '--version'], { encoding: 'utf8' });
    expect(run).toMatchObject({ status: 0, stdout: `${manifest.version}\n`, stderr: '' });
  });
});
