import { spawnSync } from 'node:child_process';
import { mkdirSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import type { BenchFact } from '../../../src/tracker/bench/index.ts';

/** How the program is run: its entry, and what it finds around it. */
export type Ran = {
  readonly start: string;
  readonly environment: (store: string) => Record<string, string>;
};

/** Invented: one step that is worked section by section, without a product. */
const schedule = `id: wiped
name: Wiped
summary: for tests of what is kept
sources: {made: invented}
source: made
steps:
  - id: wipe
    name: wipe
    class: clean
    minutes: {typical: 35, low: 20, high: 60}
    driver: area
    setup: 15
    stamps: [section on, section off]
`;

/** A chest whose only step is worked in sections: each press of `s` puts one more on, and the screen numbers them. */
export function chestInSections({ start, environment }: Ran, store: string): void {
  const run = (...words: readonly string[]): void => {
    const told = spawnSync(process.execPath, [start, ...words], {
      env: environment(store),
      encoding: 'utf8',
    });
    if (told.status !== 0) throw new Error(`${words.join(' ')}: ${told.stderr}`);
  };
  mkdirSync(join(store, 'schedules'), { recursive: true });
  writeFileSync(join(store, 'schedules', 'wiped.yaml'), schedule);
  run('add', 'Chest', '--schedule', 'wiped');
  run('settings', 'desktop', 'false');
  run('settings', 'awake', 'false');
}

/**
 * How many sections the screen says are on, and kept: null while it says nothing of them, or marks the last as not
 * written yet.
 */
export function confirmedSections(lines: readonly string[]): number | null {
  const foot = lines.find((line) => line.startsWith('[1] Chest.'));
  if (foot === undefined || foot.startsWith('[1] Chest.…')) return null;
  const [, number, act] = /section (\d+) (on|wiped)/.exec(foot) ?? [];
  if (number === undefined) return null;
  return act === 'on' ? Number(number) - 1 : Number(number);
}

/** The same of a store. */
export const sectionsIn = (facts: readonly BenchFact[]): number =>
  facts.filter((fact) => fact.kind === 'stamped' && fact.body.event === 'section-on').length;
