import type { ScheduleFigures } from '../../tracker/estimate/index.ts';
import { hoursRange, rangeInWords } from './ranges.ts';

/** `18 to 22 steps, 9 to 16 h`: what a finishing schedule comes to, whichever branch a piece goes through. */
export function stepsAndHours(figures: ScheduleFigures): string {
  const { leastSteps, mostSteps } = figures;
  if (mostSteps === 0) return hoursAlone(figures);
  const steps = leastSteps === 1 && mostSteps === 1 ? 'step' : 'steps';
  return `${rangeInWords(leastSteps, mostSteps)} ${steps}, ${hoursAlone(figures)}`;
}

/** The hours of it, where there is no room for more. */
export const hoursAlone = ({ mostSteps, lowMinutes, highMinutes }: ScheduleFigures): string =>
  mostSteps === 0 ? 'no steps' : hoursRange(lowMinutes, highMinutes);
