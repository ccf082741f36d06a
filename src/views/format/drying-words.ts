import type { DryingPace } from '../../tracker/windows/index.ts';

/** Less than this is not worth a word. */
const worthTelling = 1.05;

/** `coats dry 1.9 x as long`, `coats dry 1.2 to 1.9 x as long`; empty where the air slows none of them. */
export function dryingWords(pace: DryingPace | null): string {
  if (pace === null || pace.most < worthTelling) return '';
  const [least, most] = [pace.least.toFixed(1), pace.most.toFixed(1)];
  return `coats dry ${least === most ? most : `${least} to ${most}`} x as long`;
}
