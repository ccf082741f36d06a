import { mkdir, symlink } from 'node:fs/promises';
import { join } from 'node:path';
import { build } from 'esbuild';
import { trimDependencies } from '../build-trim.mjs';
import { buildProgram } from '../build.mjs';

const packageRoot = join(import.meta.dirname, '..', '..');

/**
 * A copy of the program of its own, so that nobody who builds meanwhile changes what is measured.
 *
 * @param {string} place a folder
 * @returns {Promise<string>} the file that starts it
 */
export async function buildCopy(place) {
  const outputFolder = join(place, 'program', 'dist');
  await mkdir(outputFolder, { recursive: true });
  for (const name of ['package.json', 'templates', 'node_modules']) {
    await symlink(join(packageRoot, name), join(place, 'program', name));
  }
  await buildProgram({ outputFolder });
  return join(outputFolder, 'start.cjs');
}

/**
 * Bundles one of the programs that something is measured with, the way the program itself is bundled.
 *
 * @param {string} place a folder
 * @param {string} name of a file beside this one, in programs/
 */
export async function buildSideProgram(place, name) {
  const outfile = join(place, 'program', 'dist', name);
  await build({
    absWorkingDir: packageRoot,
    entryPoints: [join(import.meta.dirname, 'programs', name)],
    outfile,
    bundle: true,
    format: 'esm',
    platform: 'node',
    target: 'node22.13',
    minify: true,
    jsx: 'automatic',
    logLevel: 'warning',
    define: { 'process.env.NODE_ENV': '"production"' },
    external: ['node-notifier'],
    plugins: [trimDependencies()],
    // Some packages ask for Node's own modules by require().
    banner: {
      js: "import { createRequire } from 'node:module'; const require = createRequire(import.meta.url);",
    },
  });
  return outfile;
}

/**
 * What a shell on a plain machine passes on, with everything that is kept going into `place`.
 *
 * @param {string} place
 * @param {string} store the folder of the store
 * @returns {Record<string, string>}
 */
export const plainEnvironment = (place, store) => ({
  PATH: process.env.PATH ?? '',
  HOME: join(place, 'home'),
  XDG_CACHE_HOME: join(place, 'cache'),
  LANG: 'en_GB.UTF-8',
  TZ: 'Europe/London',
  TERM: 'xterm-256color',
  COLORTERM: 'truecolor',
  RECOAT_FOLDER: store,
});
