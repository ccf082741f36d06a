import { defineConfig } from 'vitest/config';

// A zone whose clocks change finds more mistakes than one whose never do.
process.env['TZ'] ??= 'America/New_York';

const needTheBuiltProgram = ['tests/terminal/**', 'tests/toolchain/**'];
const suites = 'tests/**/*.test.{ts,tsx}';

export default defineConfig({
  test: {
    // Ink asks the machine for the size of its terminal when nothing says it, and
    // draws less where it believes that nobody watches.
    env: {
      COLUMNS: '100',
      LINES: '24',
      FORCE_COLOR: '0',
      TERM: 'xterm-256color',
      CI: 'false',
      CONTINUOUS_INTEGRATION: 'false',
    },
    projects: [
      {
        extends: true,
        test: {
          name: 'units',
          include: [suites],
          exclude: [...needTheBuiltProgram, '**/node_modules/**'],
          // How long it takes says nothing: the machine may be busy.
          testTimeout: 60_000,
          sequence: { groupOrder: 1 },
        },
      },
      {
        extends: true,
        test: {
          name: 'program',
          include: ['tests/terminal/**/*.test.{ts,tsx}', 'tests/toolchain/**/*.test.{ts,tsx}'],
          globalSetup: ['tests/toolchain/build-once.ts'],
          fileParallelism: false,
          testTimeout: 60_000,
          hookTimeout: 120_000,
          sequence: { groupOrder: 2 },
        },
      },
    ],
  },
});
