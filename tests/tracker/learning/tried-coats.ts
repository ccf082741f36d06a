import { normalQuantile } from '../../../src/tracker/estimate/normal-quantile.ts';
import {
  foreseenDrying,
  learnDrying,
  type TriedCoat,
} from '../../../src/tracker/learning/index.ts';
import { chance } from '../support/chance.ts';

/**
 * How often the next coat came within the range for four in five, over many invented products. They are slower than their
 * labels by a sixth in the middle, and their spread from coat to coat is between 0.2 and 0.45, each as likely, where the prior has a bell around the logarithm of
 * 0.36. Coats are tried first somewhere near the label's time, then again after growing waits; a few are given up.
 */
export function heldByPastCoats(past: number, rounds: number, seed: number): number {
  const part = chance(seed);
  const normal = (): number => normalQuantile(Math.max(1e-12, part()));
  let held = 0;
  for (let round = 0; round < rounds; round++) {
    const offset = 0.15 + 0.3 * normal();
    const spread = 0.2 + 0.25 * part();
    const dries = (): number => 120 * Math.exp(offset + spread * normal());
    const learned = learnDrying(Array.from({ length: past }, () => tried(dries(), part)));
    const next = dries();
    if (next >= foreseenDrying(learned, 120, 0.1) && next <= foreseenDrying(learned, 120, 0.9))
      held += 1;
  }
  return held / rounds;
}

function tried(dryAt: number, part: () => number): TriedCoat {
  let notYetAt = 0;
  let at = 120 * (0.5 + 0.8 * part());
  while (at < dryAt) {
    notYetAt = at;
    if (part() < 0.05) return { notYetAt, readyAt: null, expected: 120 };
    at *= 1.15 + 0.4 * part();
  }
  return { notYetAt, readyAt: at, expected: 120 };
}
