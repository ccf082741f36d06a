import { spawnSync } from 'node:child_process';
import { copyFileSync, mkdirSync, mkdtempSync, rmSync, symlinkSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { dirname, join } from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';

const packageRoot = join(import.meta.dirname, '..', '..');

/** A small house: every file, and what it imports. */
const house: Record<string, string[]> = {
  'src/main.ts': ['./commands/list.ts'],
  'src/commands/list.ts': [
    '../tracker/bench/index.ts',
    '../shell/session.ts',
    '../persist/store.ts',
  ],
  'src/load-program.ts': ['./starting/nosy.ts'],
  'src/starting/nosy.ts': ['../shell/session.ts'],
  'src/commands/rude.ts': ['../main.ts', '../tracker/bench/piece.ts', 'zod', 'react'],
  'src/tracker/bench/index.ts': ['./piece.ts'],
  'src/tracker/bench/piece.ts': ['../windows/index.ts'],
  'src/tracker/bench/nosy.ts': [
    '../../persist/store.ts',
    '../../views/bench/screen.tsx',
    'node:fs',
    'conf',
  ],
  'src/tracker/windows/index.ts': [],
  'src/tracker/windows/chicken.ts': ['./egg.ts'],
  'src/tracker/windows/egg.ts': ['./chicken.ts'],
  'src/persist/store.ts': ['../tracker/windows/index.ts', 'zod', 'conf'],
  'src/persist/nosy.ts': [
    '../views/bench/screen.tsx',
    '../shell/session.ts',
    'node-notifier',
    './gone.ts',
  ],
  'src/views/bench/screen.tsx': [
    '../../tracker/bench/index.ts',
    'ink',
    'react',
    'ink-select-input',
  ],
  'src/views/bench/nosy.tsx': ['../../persist/store.ts', '../../shell/session.ts', 'conf'],
  'src/shell/session.ts': ['../tracker/bench/index.ts', '../persist/store.ts'],
  'src/shell/nosy.ts': ['../commands/list.ts', 'ink', '../../tests/bench.test.ts', 'shop-vac'],
  'src/shell/screen.tsx': ['../views/bench/screen.tsx', 'ink', 'react'],
  'src/shell/ping/desktop.ts': ['node-notifier'],
  'tests/bench.test.ts': ['../src/tracker/bench/piece.ts', 'zod', 'ink'],
};

const refused = [
  'conf-in-persist: src/tracker/bench/nosy.ts -> conf',
  'conf-in-persist: src/views/bench/nosy.tsx -> conf',
  'ink-in-views-and-screen: src/commands/rude.ts -> react',
  'ink-in-views-and-screen: src/shell/nosy.ts -> ink',
  'main-is-the-top: src/commands/rude.ts -> src/main.ts',
  'no-cycles: src/tracker/windows/chicken.ts -> src/tracker/windows/egg.ts',
  'notifier-in-ping: src/persist/nosy.ts -> node-notifier',
  'persist-knows-tracker-only: src/persist/nosy.ts -> src/shell/session.ts',
  'persist-knows-tracker-only: src/persist/nosy.ts -> src/views/bench/screen.tsx',
  'program-knows-no-tests: src/shell/nosy.ts -> tests/bench.test.ts',
  'resolvable: src/persist/nosy.ts -> ./gone.ts',
  'resolvable: src/shell/nosy.ts -> shop-vac',
  'shell-is-driven-not-driving: src/shell/nosy.ts -> src/commands/list.ts',
  'starting-stands-alone: src/starting/nosy.ts -> src/shell/session.ts',
  'tracker-is-pure: src/tracker/bench/nosy.ts -> fs',
  'tracker-stands-alone: src/tracker/bench/nosy.ts -> src/persist/store.ts',
  'tracker-stands-alone: src/tracker/bench/nosy.ts -> src/views/bench/screen.tsx',
  'tracker-takes-pure-libraries: src/tracker/bench/nosy.ts -> conf',
  'tracker-through-front-doors: src/commands/rude.ts -> src/tracker/bench/piece.ts',
  'views-know-tracker-only: src/views/bench/nosy.tsx -> src/persist/store.ts',
  'views-know-tracker-only: src/views/bench/nosy.tsx -> src/shell/session.ts',
  'zod-in-persist: src/commands/rude.ts -> zod',
];

interface Violation {
  readonly from: string;
  readonly to: string;
  readonly rule: { readonly name: string; readonly severity: string };
}

let folder: string;
let found: string[];

beforeAll(() => {
  folder = mkdtempSync(join(tmpdir(), 'recoat-arrows-'));
  for (const [path, imports] of Object.entries(house)) {
    mkdirSync(dirname(join(folder, path)), { recursive: true });
    const lines = imports.map((target) => `import '${target}';`);
    writeFileSync(join(folder, path), [...lines, 'export const name = 1;', ''].join('\n'));
  }
  for (const name of ['.dependency-cruiser.cjs', 'package.json', 'tsconfig.json']) {
    copyFileSync(join(packageRoot, name), join(folder, name));
  }
  symlinkSync(join(packageRoot, 'node_modules'), join(folder, 'node_modules'), 'dir');
  const program = join(packageRoot, 'node_modules', '.bin', 'depcruise');
  const run = spawnSync(process.execPath, [program, '--output-type', 'json', 'src', 'tests'], {
    cwd: folder,
    encoding: 'utf8',
  });
  if (run.stdout === '') throw new Error(run.stderr);
  const { summary } = JSON.parse(run.stdout) as { summary: { violations: Violation[] } };
  found = summary.violations
    .filter(({ rule }) => rule.severity === 'error')
    .map(({ rule, from, to }) => `${rule.name}: ${from} -> ${packageName(to)}`)
    .sort();
});

afterAll(() => rmSync(folder, { recursive: true, force: true }));

/** node_modules/zod/index.js, also seen through the link, is zod. */
function packageName(path: string): string {
  return /node_modules\/(?:@types\/)?([^/]+)\//.exec(path)?.[1] ?? path;
}

describe('the arrows between the parts', () => {
  it.each(refused)('refuses %s', (arrow) => {
    expect(found).toContain(arrow);
  });

  it('refuses nothing else', () => {
    expect(found).toEqual(refused);
  });
});
