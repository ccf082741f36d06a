import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { readScheduleFolders } from '../../src/persist/schedules/index.ts';
import type { Product } from '../../src/tracker/trade/index.ts';

const templates = join(dirname(fileURLToPath(import.meta.url)), '..', '..', 'templates');
const library = await readScheduleFolders({ built: null, templates, own: null });

/** A product that comes with the program. */
export function shippedProduct(id: string): Product {
  const found = library.products[id];
  if (found === undefined) throw new Error(`no product ${id}`);
  return found;
}
