import { readFile, readdir } from 'node:fs/promises';
import { join } from 'node:path';

const licenceFileName = /^(licen[cs]e|copying|notice)([.-].*)?$/i;

/**
 * The text that goes with the bundled copies of other people's packages: name,
 * version and licence of each, as their licences ask.
 *
 * @param {string} packageRoot
 * @param {import('esbuild').Metafile} metafile
 */
export async function thirdPartyNotices(packageRoot, metafile) {
  const sections = [];
  for (const folder of bundledPackages(metafile)) {
    const path = join(packageRoot, folder);
    const manifest = JSON.parse(await readFile(join(path, 'package.json'), 'utf8'));
    const texts = await licenceTexts(path);
    const body =
      texts.length > 0 ? texts.join('\n\n') : await standardLicence(packageRoot, manifest);
    sections.push(`${manifest.name} ${manifest.version} (${manifest.license})\n\n${body}`);
  }
  const rule = `\n\n${'-'.repeat(78)}\n\n`;
  return `${['recoat contains code of the packages below.', ...sections].join(rule)}\n`;
}

/**
 * @param {import('esbuild').Metafile} metafile
 * @returns {string[]} their folders, relative to the package root
 */
export function bundledPackages(metafile) {
  const folders = new Set();
  for (const output of Object.values(metafile.outputs)) {
    for (const [input, { bytesInOutput }] of Object.entries(output.inputs)) {
      const folder = packageFolder(input);
      if (folder !== undefined && bytesInOutput > 0) folders.add(folder);
    }
  }
  return [...folders].sort();
}

/** @param {string} input a path such as node_modules/@scope/name/lib/file.js */
function packageFolder(input) {
  return /^.*node_modules\/(?:@[^/]+\/)?[^/]+/.exec(input)?.[0];
}

/** @param {string} folder */
async function licenceTexts(folder) {
  const names = (await readdir(folder)).filter((name) => licenceFileName.test(name)).sort();
  const texts = await Promise.all(names.map((name) => readFile(join(folder, name), 'utf8')));
  return texts.map((text) => text.trim());
}

/**
 * For a package that names its licence but ships no copy of it.
 *
 * @param {string} packageRoot
 * @param {{name: string, license?: string, author?: string | {name?: string}}} manifest
 */
async function standardLicence(packageRoot, { name, license, author }) {
  if (license !== 'MIT') {
    throw new Error(`${name} ships no licence text and says "${license}": add its text by hand`);
  }
  const holder = typeof author === 'string' ? author : (author?.name ?? `the authors of ${name}`);
  const ownLicence = await readFile(join(packageRoot, 'LICENSE'), 'utf8');
  return ownLicence.replace(/^Copyright .*$/m, `Copyright (c) ${holder}`).trim();
}
