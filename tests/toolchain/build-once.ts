import { buildProgram } from '../../scripts/build.mjs';

/** Suites that drive the built program must not meet yesterday's. */
export default async function buildOnce(): Promise<void> {
  await buildProgram();
}
