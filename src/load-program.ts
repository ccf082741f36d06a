import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { Script } from 'node:vm';
import { crc32 } from 'node:zlib';
import { isStale, readKeptCode, writeKeptCode, type KeptPart } from './starting/kept-code.ts';
import { keptFile } from './starting/kept-file.ts';

type Require = (name: string) => unknown;
type Main = { readonly start: (keepCompiledCode: () => void) => void };

/**
 * Runs the bundled program, with the code that V8 compiled when it ran these words before. Node's own cache holds only what
 * is compiled as a file is loaded. Most functions are compiled when they are first called: a fifth of a command's time.
 *
 * @param folder of the bundle
 * @param requireOther finds what isn't part of the bundle
 */
export function loadProgram(folder: string, requireOther: Require): void {
  const file = keptFile(process.argv.slice(2), process.env, process.platform);
  const kept = (file === null ? null : readKeptCode(file)) ?? new Map<string, KeptPart>();
  const loaded = new Map<string, { exports: unknown }>();
  const scripts = new Map<string, { readonly source: number; readonly script: Script }>();
  let lacks = false;

  const load = (name: string): unknown => {
    const before = loaded.get(name);
    if (before !== undefined) return before.exports;
    const module = { exports: {} as unknown };
    loaded.set(name, module);
    const path = join(folder, name);
    const bytes = readFileSync(path);
    const source = crc32(bytes);
    // Of another build nothing is of use any more.
    if (kept.get(name)?.source !== source && kept.delete(name)) kept.clear();
    const cachedData = kept.get(name)?.code;
    const script = new Script(`${parameters}${bytes.toString()}\n})`, {
      filename: path,
      ...(cachedData && { cachedData }),
    });
    scripts.set(name, { source, script });
    lacks ||= script.cachedDataRejected !== false;
    const run = script.runInThisContext() as (...given: readonly unknown[]) => void;
    run(module.exports, requirePart, module, path, folder);
    return module.exports;
  };
  const requirePart: Require = (name) =>
    name.startsWith('./') ? load(name.slice(2)) : requireOther(name);

  const keep = (): void => {
    if (file === null || !(lacks || isStale(file, Date.now()))) return;
    lacks = false;
    for (const [name, { source, script }] of scripts)
      kept.set(name, { source, code: script.createCachedData() });
    writeKeptCode(file, kept);
  };
  // A command that failed ran little of what it is for.
  process.on('exit', (code) => {
    if (code === 0) keep();
  });
  (load('main.cjs') as Main).start(keep);
}

const parameters = '(function(exports,require,module,__filename,__dirname){';
