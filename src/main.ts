import { readFileSync } from 'node:fs';

/** The package's own manifest; dist/ and src/ both lie one folder below it. */
function packageVersion(): string {
  const manifest: unknown = JSON.parse(
    readFileSync(new URL('../package.json', import.meta.url), 'utf8'),
  );
  if (manifest === null || typeof manifest !== 'object' || !('version' in manifest)) return 'unknown';
  return String(manifest.version);
}

if (process.argv.includes('--version')) {
  console.log(packageVersion());
}
