import { join } from 'node:path';
import { ESLint } from 'eslint';
import tseslint from 'typescript-eslint';
import { describe, expect, it } from 'vitest';

const linter = new ESLint({
  cwd: join(import.meta.dirname, '..', '..'),
  // The texts below are no files, so that they have no types.
  overrideConfig: [
    tseslint.configs.disableTypeChecked,
    { languageOptions: { parserOptions: { projectService: false } } },
  ] as ESLint.Options['overrideConfig'],
});

async function complaints(filePath: string, text: string): Promise<string[]> {
  const [result] = await linter.lintText(text, { filePath });
  return (result?.messages ?? [])
    .map(({ ruleId, message }) => ruleId ?? message)
    .filter((rule) => rule.startsWith('no-restricted'));
}

const readsTheClock = ['Date.now()', 'new Date()', 'Date()', 'performance.now()'];

describe('lint in the core', () => {
  it.each([
    ...readsTheClock,
    'Temporal.Now.instant()',
    'setTimeout(run, 1)',
    'setInterval(run, 1)',
    'Math.random()',
    'process.env.HOME',
    'console.log(1)',
    'new Intl.NumberFormat()',
    'globalThis.process',
    'new Date(0).getHours()',
    '(1).toLocaleString()',
    "'a'.localeCompare('b')",
  ])('refuses %s', async (expression) => {
    expect(
      await complaints('src/tracker/bench/sample.ts', `export const x = ${expression};`),
    ).toHaveLength(1);
  });

  it.each(['node:fs', 'fs', 'node:path', 'fs/promises', 'node:os'])(
    'refuses to import %s',
    async (name) => {
      expect(await complaints('src/tracker/bench/sample.ts', `import '${name}';`)).toEqual([
        'no-restricted-imports',
      ]);
    },
  );

  it.each([
    'new Date(0).toISOString()',
    'Date.UTC(2026, 0)',
    'Math.max(1, 2)',
    'Temporal.Duration.from(text)',
  ])('takes %s', async (expression) => {
    expect(
      await complaints('src/tracker/bench/sample.ts', `export const x = ${expression};`),
    ).toEqual([]);
  });
});

describe('lint in the views', () => {
  it.each([...readsTheClock, 'process.stdout', 'setInterval(run, 1000)', 'console.log(1)'])(
    'refuses %s',
    async (expression) => {
      expect(
        await complaints('src/views/bench/sample.tsx', `export const x = ${expression};`),
      ).toHaveLength(1);
    },
  );

  it('refuses the disk', async () => {
    expect(await complaints('src/views/bench/sample.tsx', "import 'node:fs';")).toEqual([
      'no-restricted-imports',
    ]);
  });
});

describe('lint in the shell', () => {
  it('lets it read the clock, which is its work', async () => {
    expect(await complaints('src/shell/sample.ts', 'export const x = Date.now();')).toEqual([]);
  });
});
