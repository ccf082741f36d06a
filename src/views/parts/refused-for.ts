import type { Instant } from '../../tracker/time/index.ts';

/** A key that was refused because the step waits for its trial. */
export type RefusedFor = { readonly step: string; readonly at: Instant };
