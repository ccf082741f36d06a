import type { WindowRule } from '../../windows/model.ts';
import { trialWindow, type StepClass } from '../schedule.ts';
import { ofCoats, ofStains } from './coats.ts';
import { ofTrials } from './trials.ts';
import type { RemedyStep, Trouble } from './trouble.ts';
import { ofChemicals, ofGlue, ofWetWood } from './wet-work.ts';

const wetWork: ReadonlySet<StepClass> = new Set(['clean', 'strip', 'bleach', 'rinse, neutralise']);

/** The troubles that are offered where a window was tried, on a step of that class. */
export function troublesTried(
  { id, kind }: Pick<WindowRule, 'id' | 'kind'>,
  stepClass: StepClass,
): readonly Trouble[] {
  if (id === trialWindow) return ofTrials;
  if (kind === 'glue') return ofGlue;
  if (kind === 'chemical' || kind === 'pot') return ofChemicals;
  if (kind !== 'coat') return ofCoats;
  if (stepClass === 'stain') return ofStains;
  return wetWork.has(stepClass) ? ofWetWood : ofCoats;
}

/** The steps that a remedy puts in after the step that had the trouble, ready to insert. */
export function remedySteps(trouble: Trouble, troubled: RemedyStep): readonly RemedyStep[] {
  const name = troubled.name.replace(/, again\b.*$/, '');
  return trouble.steps.map((remedy): RemedyStep =>
    'again' in remedy ? { ...troubled, name: `${name}, ${remedy.again}` } : remedy,
  );
}
