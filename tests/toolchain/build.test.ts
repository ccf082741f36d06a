import { mkdtempSync, readFileSync, readdirSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { Metafile } from 'esbuild';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { bundledPackages } from '../../scripts/build-notices.mjs';
import { buildProgram } from '../../scripts/build.mjs';

let folder: string;
let metafile: Metafile;

beforeAll(async () => {
  folder = mkdtempSync(join(tmpdir(), 'recoat-build-'));
  metafile = await buildProgram({ outputFolder: folder });
});

afterAll(() => rmSync(folder, { recursive: true, force: true }));

/** The files that Node loads before the first line of `output` runs. */
function loadedWith(output: string, seen = new Set<string>()): Set<string> {
  if (seen.has(output)) return seen;
  seen.add(output);
  for (const { path, kind, external } of metafile.outputs[output]?.imports ?? []) {
    if (kind === 'import-statement' && external !== true) loadedWith(path, seen);
  }
  return seen;
}

describe('the build', () => {
  it('loads neither React, Ink, the stores, the notifier nor the calendar for a quick command', () => {
    const main = Object.keys(metafile.outputs).find((path) => path.endsWith('/main.mjs')) ?? '';
    const inputs = [...loadedWith(main)].flatMap((path) =>
      Object.keys(metafile.outputs[path]?.inputs ?? {}),
    );
    expect(inputs).toContain('src/main.ts');
    const heavy =
      /node_modules\/(react|react-reconciler|ink|ink-select-input|yoga-layout|conf|ajv|node-notifier|temporal-polyfill)\/|zod\/v4\/locales/;
    expect(inputs.filter((path) => heavy.test(path))).toEqual([]);
  });

  it('loads for a command that records neither the past, the network, other programs nor what conf would check with', () => {
    const files = ['src/commands/line/recording-commands.ts', 'src/persist/writing/disk-store.ts']
      .flatMap((source) =>
        Object.entries(metafile.outputs).flatMap(([path, { entryPoint }]) =>
          entryPoint?.endsWith(source) === true ? [path] : [],
        ),
      )
      .flatMap((path) => [...loadedWith(path)]);
    const inputs = files.flatMap((path) => Object.keys(metafile.outputs[path]?.inputs ?? {}));
    expect(inputs).toContain('src/commands/note.ts');
    expect(inputs).toContain('node_modules/conf/dist/source/index.js');
    const heavy = /node_modules\/(ajv|ajv-formats|semver|ical-generator)\/|src\/views\/hours\//;
    expect(inputs.filter((path) => heavy.test(path))).toEqual([]);
    const ofNode = files.flatMap((path) =>
      (metafile.outputs[path]?.imports ?? [])
        .filter(({ kind }) => kind === 'import-statement')
        .map((imported) => imported.path),
    );
    expect(ofNode).toContain('node:fs');
    expect(ofNode.filter((name) => /^node:(net|child_process|crypto)$/.test(name))).toEqual([]);
  });

  it('leaves no development build of React and no fetch in the layout engine', () => {
    const inputs = Object.values(metafile.outputs).flatMap((output) => Object.keys(output.inputs));
    expect(inputs.filter((path) => /react.*\.development\.js$/.test(path))).toEqual([]);
    // The layout engine's bytes begin with WebAssembly's magic number; as an address they would be fetched.
    const fetched = 'data:application/octet-stream;base64,AGFzbQ';
    const holders = readdirSync(folder)
      .filter((name) => name.endsWith('.cjs'))
      .filter((name) => readFileSync(join(folder, name), 'utf8').includes(fetched));
    expect(holders).toEqual([]);
  });

  it('names every bundled package with its version and licence', () => {
    const notices = readFileSync(join(folder, 'THIRD-PARTY-NOTICES.txt'), 'utf8');
    const packages = bundledPackages(metafile);
    for (const path of packages) {
      const { name, version, license } = JSON.parse(
        readFileSync(join(path, 'package.json'), 'utf8'),
      );
      expect(notices).toContain(`\n${name} ${version} (${license})\n`);
    }
    // A line of rule before each package, and one licence text after it at the least.
    expect(notices.split('-'.repeat(78))).toHaveLength(packages.length + 1);
  });

  it('takes away what an earlier build left', async () => {
    const before = readdirSync(folder);
    await buildProgram({ outputFolder: folder });
    expect(readdirSync(folder)).toEqual(before);
  });
});
