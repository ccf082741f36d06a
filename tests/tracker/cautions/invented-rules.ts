import { expect } from 'vitest';
import { readRules } from '../../../src/persist/schedules/index.ts';
import { foldBench } from '../../../src/tracker/bench/index.ts';
import { cautionsOfStep, type StepCautions } from '../../../src/tracker/cautions/index.ts';
import type { Instant } from '../../../src/tracker/time/index.ts';
import { at } from '../support/instants.ts';
import type { Past } from '../support/past.ts';
import { labelSense } from '../support/sense.ts';

const templates = new URL('../../../templates/', import.meta.url).pathname;

/** The rules that come with the program. */
export const { rules } = await readRules({ built: null, templates });

/** The cautions of a step of a piece after what was told. */
export function cautionsAt(
  told: Past,
  piece: string,
  step: string,
  now: Instant = at('12:00'),
): StepCautions {
  const bench = foldBench(told.facts);
  const found = bench.pieces.get(piece);
  const planned = found?.steps.find(({ id }) => id === step);
  if (found === undefined || planned === undefined) throw new Error(`no step ${piece} ${step}`);
  return cautionsOfStep(found, planned, { bench, rules, now, sense: labelSense });
}

export const idsOf = (cautions: StepCautions['all']): readonly string[] =>
  cautions.map(({ id }) => id);

/** The one caution with that id. */
export function theOne({ all }: StepCautions, id: string) {
  const found = all.find((each) => each.id === id);
  if (found === undefined) expect(idsOf(all)).toContain(id);
  return found;
}
