import { fileURLToPath } from 'node:url';

const here = (address: URL): string => fileURLToPath(address);

/** The programs of this folder, which tests run in processes of their own. */
export const programs = {
  appendMany: here(new URL('./append-many.ts', import.meta.url)),
  killLater: here(new URL('./kill-later.ts', import.meta.url)),
  present: here(new URL('./present.ts', import.meta.url)),
  whatReadingLoads: here(new URL('./what-reading-loads.ts', import.meta.url)),
  workOnRequest: here(new URL('./work-on-request.ts', import.meta.url)),
};
