import { spawnSync } from 'node:child_process';
import {
  cpSync,
  mkdtempSync,
  readFileSync,
  readdirSync,
  rmSync,
  statSync,
  writeFileSync,
} from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import manifest from '../../package.json' with { type: 'json' };
import { readKeptCode, writeKeptCode } from '../../src/starting/kept-code.ts';
import { packageFolder } from '../terminal/support/terminal.ts';

let folder: string;
let kept: string;

beforeEach(() => {
  folder = mkdtempSync(join(tmpdir(), 'recoat-kept-'));
  kept = join(folder, 'recoat', 'compiled', 'bench-json');
});
afterEach(() => rmSync(folder, { recursive: true, force: true }));

/** The built program, or a copy of it, on an empty bench. */
function run(words: readonly string[], dist = join(packageFolder, 'dist')) {
  const { NODE_OPTIONS: _, ...env } = process.env;
  return spawnSync(process.execPath, [join(dist, 'start.cjs'), ...words], {
    encoding: 'utf8',
    env: { ...env, XDG_CACHE_HOME: folder, RECOAT_FOLDER: join(folder, 'store') },
  });
}
const bench = (dist?: string) => run(['bench', '--json'], dist);
const rows = { status: 0, stderr: '', stdout: expect.stringContaining('"rows"') };

const wrapped = (source: string): string =>
  `(function(exports,require,module,__filename,__dirname){${source}\n})`;

/** What V8 takes for the code of `source`, of which it looks at the length only: it says that it ran, and ends. */
function markedCode(source: string): Buffer {
  const saying = 'console.log("kept code ran");process.exit(0);';
  const script = JSON.stringify(wrapped(saying.padEnd(source.length)));
  const program = `process.stdout.write(new (require('node:vm').Script)(${script}).createCachedData())`;
  return spawnSync(process.execPath, ['-e', program]).stdout;
}

describe('the built program', () => {
  it('runs the code that it kept', () => {
    expect(bench()).toMatchObject(rows);
    const parts = readKeptCode(kept);
    const main = parts?.get('main.cjs');
    if (!parts || !main) throw new Error('nothing was kept');
    const source = readFileSync(join(packageFolder, 'dist', 'main.cjs'), 'utf8');
    parts.set('main.cjs', { ...main, code: markedCode(source) });
    writeKeptCode(kept, parts);
    expect(bench()).toMatchObject({ status: 0, stderr: '', stdout: 'kept code ran\n' });
  });

  it('keeps it once, with what was compiled only when it was called', () => {
    bench();
    const size = (code: ReturnType<typeof readKeptCode>): number =>
      Math.max(...[...(code ?? [])].map(([, part]) => part.code.length));
    const { mtimeMs } = statSync(kept);
    const ran = size(readKeptCode(kept));
    expect(bench()).toMatchObject(rows);
    expect(statSync(kept).mtimeMs).toBe(mtimeMs);
    run(['--version']);
    const started = size(readKeptCode(join(folder, 'recoat', 'compiled', 'screen')));
    expect(ran).toBeGreaterThan(1.1 * started);
  });

  it('does without it where it is damaged, and makes it anew', () => {
    bench();
    const whole = readFileSync(kept);
    writeFileSync(kept, whole.fill(0, whole.length >> 1));
    expect(bench()).toMatchObject(rows);
    expect(readKeptCode(kept)?.size).toBeGreaterThan(1);
  });

  it('drops what it kept of another build', () => {
    const dist = join(folder, 'dist');
    cpSync(join(packageFolder, 'dist'), dist, { recursive: true });
    bench(dist);
    const main = readFileSync(join(dist, 'main.cjs'), 'utf8');
    writeFileSync(join(dist, 'main.cjs'), `${main}\n`);
    const before = readKeptCode(kept)?.get('main.cjs')?.source;
    writeKeptCode(
      kept,
      new Map([...(readKeptCode(kept) ?? []), ['gone.cjs', { source: 1, code: Buffer.alloc(9) }]]),
    );
    expect(bench(dist)).toMatchObject(rows);
    expect(readKeptCode(kept)?.get('main.cjs')?.source).not.toBe(before);
    expect(readKeptCode(kept)?.has('gone.cjs')).toBe(false);
  });

  it('keeps nothing of a command that failed, or that there is none of', () => {
    expect(run(['piece', '99']).status).not.toBe(0);
    expect(run(['../up']).status).not.toBe(0);
    expect(readdirSync(folder)).not.toContain('recoat');
  });

  it('starts where nothing can be kept', () => {
    writeFileSync(join(folder, 'recoat'), 'no folder');
    expect(run(['--version'])).toMatchObject({
      status: 0,
      stderr: '',
      stdout: `${manifest.version}\n`,
    });
  });
});
