import { mkdir, readFile, readdir, rm, writeFile } from 'node:fs/promises';
import { basename, dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { build, transform } from 'esbuild';
import { withPlainExports } from './build-chunks.mjs';
import { thirdPartyNotices } from './build-notices.mjs';
import { builtTemplates } from './build-templates.mjs';
import { trimDependencies } from './build-trim.mjs';

const packageRoot = join(dirname(fileURLToPath(import.meta.url)), '..');
const oldestNode = 'node22.13';
const ownAddress = 'const importMetaUrl=require("node:url").pathToFileURL(__filename).href;';

/**
 * Bundles the program: dist/start.cjs (copied as it is), dist/load-program.cjs, dist/main.cjs and
 * the chunks that it loads when needed, and one file for each `*-worker.ts`.
 *
 * @param {{outputFolder?: string}} [options] outputFolder: default dist/
 * @returns {Promise<import('esbuild').Metafile>} what went into which file; its
 *   names end in .mjs where the written files end in .cjs
 */
export async function buildProgram({ outputFolder = join(packageRoot, 'dist') } = {}) {
  const bundles = [await bundle(outputFolder), await bundleAlone(outputFolder)];
  const metafile = {
    inputs: Object.assign({}, ...bundles.map((each) => each.metafile.inputs)),
    outputs: Object.assign({}, ...bundles.map((each) => each.metafile.outputs)),
  };
  /** @type {Map<string, string | Uint8Array>} */
  const files = new Map();
  for (const file of bundles.flatMap(({ outputFiles }) => outputFiles)) {
    files.set(basename(file.path).replace(/\.mjs$/, '.cjs'), await toCommonJs(file.text));
  }
  // Parsing the YAML would take longer than all the rest of adding a piece.
  const { templates, rules } = await builtTemplates(packageRoot);
  files.set('templates.json', templates);
  files.set('rules.json', rules);
  files.set('start.cjs', await readFile(join(packageRoot, 'src', 'start.cjs')));
  files.set('THIRD-PARTY-NOTICES.txt', await thirdPartyNotices(packageRoot, metafile));
  await writeFolder(outputFolder, files);
  return metafile;
}

/** @param {string} outputFolder */
const bundle = (outputFolder) =>
  build({
    ...commonOptions(outputFolder),
    entryPoints: [join('src', 'main.ts')],
    chunkNames: '[name]-[hash]',
    splitting: true,
    jsx: 'automatic',
    // It finds its helper programs beside itself, so it must stay a folder of its own.
    external: ['node-notifier'],
    plugins: [trimDependencies(), afterMain(), onlyWhatIsUsed()],
  });

/**
 * What loads the program, and each thread's code, are files of their own: sharing chunks with main.ts would cut that up, for
 * every command to load.
 *
 * @param {string} outputFolder
 */
async function bundleAlone(outputFolder) {
  const sources = await readdir(join(packageRoot, 'src'), { recursive: true });
  const workers = sources.filter((path) => path.endsWith('-worker.ts'));
  return build({
    ...commonOptions(outputFolder),
    entryPoints: ['load-program.ts', ...workers].map((path) => join('src', path)),
    plugins: [onlyWhatIsUsed()],
  });
}

/** @param {string} outputFolder */
const commonOptions = (outputFolder) =>
  /** @type {const} */ ({
    absWorkingDir: packageRoot,
    outdir: outputFolder,
    entryNames: '[name]',
    outExtension: { '.js': '.mjs' },
    write: false,
    metafile: true,
    bundle: true,
    format: 'esm',
    platform: 'node',
    target: oldestNode,
    minifySyntax: true,
    legalComments: 'none',
    logLevel: 'warning',
    define: { 'process.env.NODE_ENV': '"production"' },
  });

/**
 * No module of the program does more than declare, save main.ts: what nobody uses of one need not be loaded. Without this
 * a front door brings along every room behind it.
 *
 * @returns {import('esbuild').Plugin}
 */
function onlyWhatIsUsed() {
  const sources = join(packageRoot, 'src');
  const resolving = Symbol('resolving');
  return {
    name: 'only-what-is-used',
    setup(build) {
      build.onResolve({ filter: /^\.{1,2}\// }, async ({ path, ...from }) => {
        if (from.pluginData === resolving || !from.importer.startsWith(sources)) return undefined;
        const { importer, resolveDir, kind } = from;
        const options = { importer, resolveDir, kind, pluginData: resolving };
        return { ...(await build.resolve(path, options)), sideEffects: false };
      });
    },
  };
}

/**
 * What is loaded when it is needed finds main.ts loaded already. Saying so lets esbuild put all that main.ts starts with
 * into one file: it would cut that up by who else uses which piece, and nine files take 2 ms longer to load than two, a
 * seventh of an empty Node start.
 *
 * @returns {import('esbuild').Plugin}
 */
function afterMain() {
  const [sources, namespace] = [join(packageRoot, 'src'), 'after-main'];
  return {
    name: 'after-main',
    setup(build) {
      build.onResolve({ filter: /^\.{1,2}\// }, ({ path, kind, importer, resolveDir }) =>
        kind === 'dynamic-import' && importer.startsWith(sources)
          ? { path: join(resolveDir, path), namespace }
          : undefined,
      );
      build.onLoad({ filter: /.*/, namespace }, ({ path }) => {
        const load = `import ${JSON.stringify(join(sources, 'main.ts'))};`;
        return { contents: `${load} export * from ${JSON.stringify(path)};`, resolveDir: sources };
      });
    },
  };
}

/**
 * Only ESM can be split into chunks, but Node starts CommonJS faster: on a quick
 * command the ESM loader alone costs a quarter of an empty Node start.
 *
 * @param {string} code
 */
async function toCommonJs(code) {
  const result = await transform(withPlainExports(code), {
    format: 'cjs',
    platform: 'node',
    target: oldestNode,
    minify: true,
    // Turns import() into require(), still when first asked for.
    supported: { 'dynamic-import': false },
    define: {
      'import.meta.url': 'importMetaUrl',
      'import.meta.dirname': '__dirname',
      'import.meta.filename': '__filename',
    },
    banner: code.includes('import.meta.url') ? `'use strict';${ownAddress}` : "'use strict';",
  });
  return result.code.replaceAll(/(["'])\.\/([\w-]+)\.mjs\1/g, '"./$2.cjs"');
}

/**
 * Leaves exactly these files in the folder, touching only those that changed, so
 * that a program running from it is disturbed as little as can be.
 *
 * @param {string} folder
 * @param {Map<string, string | Uint8Array>} files
 */
async function writeFolder(folder, files) {
  await mkdir(folder, { recursive: true });
  for (const [name, content] of files) {
    const path = join(folder, name);
    const before = await readFile(path).catch(() => undefined);
    if (before === undefined || !before.equals(Buffer.from(content)))
      await writeFile(path, content);
  }
  for (const name of await readdir(folder)) {
    if (!files.has(name)) await rm(join(folder, name), { recursive: true });
  }
}

if (process.argv[1] === fileURLToPath(import.meta.url)) await buildProgram();
