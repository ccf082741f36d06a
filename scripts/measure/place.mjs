import { execFileSync } from 'node:child_process';
import { existsSync, mkdtempSync, readFileSync } from 'node:fs';
import { mkdtemp, rm, stat } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { copyStore, inventorOfTemplates, writeBench, writeHistory } from './large-store.mjs';
import { buildCopy, buildSideProgram, plainEnvironment } from './program.mjs';

/** A full bench, and one as most days see it. */
export const fullBench = 60;
export const usualBench = 8;
const years = 10;

/** @typedef {Awaited<ReturnType<typeof makePlace>>} Place */

/** Everything that is measured lies in one temporary folder: a copy of the program, and stores. */
export async function makePlace() {
  const folder = await mkdtemp(join(tmpdir(), 'recoat-measure-'));
  const start = await buildCopy(folder);
  const invent = await inventorOfTemplates();
  const history = join(folder, 'history');
  await writeHistory(history, { years, now: Date.now(), invent });
  let stores = 0;
  return {
    folder,
    start,
    /** @param {string} store */
    environment: (store) => plainEnvironment(folder, store),
    /** @param {string} name */
    sideProgram: (name) => buildSideProgram(folder, name),
    /**
     * A store as it stands now.
     *
     * @param {{pieces: number, hasHistory?: boolean, firstOpensIn?: number, apart?: number}} wanted
     * @returns {Promise<string>} its folder
     */
    async freshStore({ hasHistory = true, ...bench }) {
      stores += 1;
      const store = join(folder, `store-${stores}`);
      if (hasHistory) await copyStore(history, store);
      await writeBench(store, { now: Date.now(), invent, ...bench });
      return store;
    },
    /** @param {string} store */
    benchBytes: async (store) => (await stat(join(store, 'bench.json'))).size,
    /** Also where what was measured is broken off: then a small disk may still be mounted in it. */
    async remove() {
      for (const disk of mountedIn(folder)) execFileSync('umount', ['--lazy', disk]);
      // A program that was just killed may leave a file behind for a moment.
      await rm(folder, { recursive: true, force: true, maxRetries: 5 });
    },
  };
}

/** @param {string} place @returns {string} an empty folder in it */
export const newFolder = (place) => mkdtempSync(join(place, 'folder-'));

/** @param {string} folder @returns {readonly string[]} known where the system is Linux */
const mountedIn = (folder) =>
  existsSync('/proc/mounts')
    ? readFileSync('/proc/mounts', 'utf8')
        .split('\n')
        .map((line) => line.split(' ')[1] ?? '')
        .filter((path) => path.startsWith(`${folder}/`))
    : [];
