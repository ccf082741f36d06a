import { chmod, mkdir, mkdtemp, rename, rm, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { delimiter, join } from 'node:path';

/** A Tuesday afternoon in winter. */
const begins = Date.parse('2026-11-24T14:29:00Z');

/**
 * Stand-ins for what the program asks of a desktop: one takes every notification, the other keeps nothing awake. So a
 * picture doesn't tell of the machine it was made on.
 */
const standIns = {
  'notify-send': 'exit 0',
  'systemd-inhibit': 'exec cat',
};

/**
 * A place for one run of the program: an empty home and store, and a clock that stands still until it is told otherwise.
 */
export async function makeStage() {
  const folder = await mkdtemp(join(tmpdir(), 'recoat-pictures-'));
  const programs = join(folder, 'programs');
  const clock = join(folder, 'clock');
  let now = begins;
  const tell = async () => {
    // Renamed into place, so that the program never reads half a figure.
    await writeFile(`${clock}.next`, String(now));
    await rename(`${clock}.next`, clock);
  };
  await mkdir(programs);
  for (const [name, line] of Object.entries(standIns)) {
    await writeFile(join(programs, name), `#!/bin/sh\n${line}\n`);
    await chmod(join(programs, name), 0o755);
  }
  await tell();
  /** @type {Record<string, string>} */
  const environment = {
    PATH: [programs, process.env['PATH'] ?? ''].join(delimiter),
    HOME: folder,
    // The demo's store is made there, and thrown away with the rest when the program is killed.
    TMPDIR: folder,
    XDG_CACHE_HOME: join(folder, 'cache'),
    RECOAT_FOLDER: join(folder, 'store'),
    TOLD_CLOCK: clock,
    LANG: 'en_GB.UTF-8',
    TZ: 'Europe/London',
    TERM: 'xterm-256color',
    COLORTERM: 'truecolor',
  };
  return {
    folder,
    environment,
    /** @param {number} seconds */
    pass: async (seconds) => {
      now += seconds * 1000;
      await tell();
    },
    remove: () => rm(folder, { recursive: true, force: true, maxRetries: 3 }),
  };
}

/** @typedef {Awaited<ReturnType<typeof makeStage>>} Stage */
