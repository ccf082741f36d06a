import type { Step } from '../schedule.ts';

/** One thing that a surface can show when it is tried and not as it should be, and what is usually done about it. */
export type Trouble = {
  readonly id: string;
  /** As a person would call it: `runs, sags`. */
  readonly name: string;
  /** What is done about it, in a few words. */
  readonly remedy: string;
  /** What of it are steps; `again` is the step that had the trouble, once more. */
  readonly steps: readonly (RemedyStep | Again)[];
};

export type RemedyStep = Omit<Step, 'id'>;
export type Again = { readonly again: string };

export const noneOfThese: Trouble = {
  id: 'none of these',
  name: 'none of these',
  remedy: 'write what it was',
  steps: [],
};
