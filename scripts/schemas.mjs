import { mkdir, writeFile } from 'node:fs/promises';
import { fileURLToPath } from 'node:url';
import { format } from 'prettier';
import { jsonSchemas } from '../src/persist/schedules/parsing.ts';

/**
 * The text of every JSON Schema in templates/schema/, made from the forms that the program reads schedules with.
 *
 * @returns {Promise<ReadonlyMap<string, string>>} text by file name
 */
export async function schemaTexts() {
  /** @type {Map<string, string>} */
  const texts = new Map();
  for (const [name, schema] of Object.entries(jsonSchemas())) {
    texts.set(name, await format(JSON.stringify(schema), { parser: 'json' }));
  }
  return texts;
}

if (process.argv[1] === fileURLToPath(import.meta.url)) {
  const folder = new URL('../templates/schema/', import.meta.url);
  await mkdir(folder, { recursive: true });
  for (const [name, text] of await schemaTexts()) await writeFile(new URL(name, folder), text);
}
