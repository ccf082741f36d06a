import { defineConfig } from 'vitest/config';

export default defineConfig({
  test: {
    include: ['tests/**/*.test.{ts,tsx}'],
    env: { COLUMNS: '100', LINES: '24', FORCE_COLOR: '0' },
  },
});
