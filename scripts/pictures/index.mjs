import { mkdir, mkdtemp, rm, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { buildCopy } from '../measure/program.mjs';
import { scenes } from './scenes.mjs';
import { makeStage } from './stage.mjs';
import { screenAsSvg } from './svg.mjs';
import { openTerminal } from './terminal.mjs';

/**
 * `npm run pictures`: makes the pictures of the documents from the real program, each in a terminal of its own.
 * `npm run pictures -- bench keys` makes only these.
 */

const folder = join(import.meta.dirname, '..', '..', 'docs', 'pictures');

const wanted = process.argv.slice(2);
const unknown = wanted.filter((name) => !scenes.some((scene) => scene.name === name));
if (unknown.length > 0) {
  const names = scenes.map(({ name }) => name).join(', ');
  console.error(`Not drawn: there is no picture ${unknown.join(', ')}. There are: ${names}.`);
  process.exit(64);
}

/**
 * @param {string} start the file that starts the program
 * @param {import('./scenes.mjs').Scene} scene
 * @returns {Promise<string>}
 */
async function draw(start, { title, args, columns, rows, begins, act }) {
  const stage = await makeStage();
  const terminal = openTerminal({ start, args, columns, rows, stage });
  try {
    await terminal.shows(begins);
    await act(terminal, stage);
    await terminal.settles();
    return screenAsSvg(terminal.emulator, title);
  } finally {
    await terminal.end();
    await stage.remove();
  }
}

const place = await mkdtemp(join(tmpdir(), 'recoat-pictures-'));
try {
  const start = await buildCopy(place);
  await mkdir(folder, { recursive: true });
  for (const scene of scenes) {
    if (wanted.length > 0 && !wanted.includes(scene.name)) continue;
    try {
      const picture = await draw(start, scene);
      await writeFile(join(folder, `${scene.name}.svg`), picture);
      console.log(`${scene.name}.svg ${Math.ceil(picture.length / 1000)} kB`);
    } catch (error) {
      // The picture that was there stays; the others are made.
      console.error(
        `Not drawn: ${scene.name}. ${error instanceof Error ? error.message : String(error)}`,
      );
      process.exitCode = 1;
    }
  }
} finally {
  await rm(place, { recursive: true, force: true });
}
