import { join } from 'node:path';
import { build } from 'esbuild';

/**
 * Reads templates/ once at build time: parsing that much YAML takes longer than a command may. The reader is bundled
 * first, so that any Node that can run the build can run it.
 *
 * @param {string} packageRoot
 * @returns {Promise<{templates: string, rules: string}>} JSON for dist/templates.json and dist/rules.json
 */
export async function builtTemplates(packageRoot) {
  const bundled = await build({
    entryPoints: [join(packageRoot, 'src', 'persist', 'schedules', 'index.ts')],
    bundle: true,
    write: false,
    format: 'esm',
    platform: 'node',
    logLevel: 'warning',
    // The YAML parser asks for them by require().
    banner: {
      js: `import { createRequire } from 'node:module'; const require = createRequire(${JSON.stringify(join(packageRoot, 'package.json'))});`,
    },
  });
  const code = Buffer.from(bundled.outputFiles[0]?.contents ?? []).toString('base64');
  /** @type {typeof import('../src/persist/schedules/index.ts')} */
  const { readRules, readScheduleFolders, tellProblem } = await import(
    `data:text/javascript;base64,${code}`
  );
  const templates = join(packageRoot, 'templates');
  const library = await readScheduleFolders({ built: null, templates, own: null });
  // Problems of the rules are among those of the library, which is held against them.
  if (library.problems.length > 0) throw new Error(library.problems.map(tellProblem).join('\n'));
  const { schedules, products, sources } = library;
  const { rules } = await readRules({ built: null, templates });
  return {
    templates: JSON.stringify({ schedules, products, sources }),
    rules: JSON.stringify(rules),
  };
}
