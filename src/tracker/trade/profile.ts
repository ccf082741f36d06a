import type { Step, StepClass } from './schedule.ts';

/** What a surface is like to work by hand: flat, framed panels, turned or moulded, carved. */
export const shapes = ['flat', 'panels', 'turned', 'carved'] as const;
export type Shape = (typeof shapes)[number];

/** The shape that costs most of a piece, and the share of its show surface that is so, above 0 to 1; the rest is flat. */
export type Profile = { readonly shape: Shape; readonly share: number };

/** How many times the hand work of a flat surface (common practice, no source). */
const timesFlat: Readonly<Record<Shape, number>> = { flat: 1, panels: 1.4, turned: 1.8, carved: 3 };

/** Scraper, paper, brush and rag follow the shape; bleach, rinse, stain and spray go over it (common practice, no source). */
const followsShape: ReadonlySet<StepClass> = new Set<StepClass>([
  'strip',
  'sand bare, first grit',
  'sand bare, next grit',
  'sand after bleach',
  'coat, brushed',
  'coat, wiped',
  'scuff',
]);

/** How many times the minutes of a flat piece a step takes for its shape; 1 where that isn't known or has no say. */
export function profileFactor(
  { driver, stepClass }: Pick<Step, 'driver' | 'stepClass'>,
  profile: Profile | null,
): number {
  if (profile === null || driver !== 'area' || !followsShape.has(stepClass)) return 1;
  return 1 + profile.share * (timesFlat[profile.shape] - 1);
}

/** `turned 30 %`; without a share where all of it is so. */
export const profileWords = ({ shape, share }: Profile): string =>
  share === 1 ? shape : `${shape} ${Math.round(share * 100)} %`;

/** Reads `carved`, `turned 30 %` and `30 % turned`; null for anything else. */
export function readProfile(typed: string): Profile | null {
  const text = typed.trim().toLowerCase();
  const read =
    /^([a-z]+)(?:\s+(\d{1,3})\s*%)?$/.exec(text) ?? /^(\d{1,3})\s*%\s*([a-z]+)$/.exec(text);
  const words = read?.slice(1) ?? [];
  const shape = shapes.find((each) => words.includes(each));
  const percent = Number(words.find((word) => /^\d+$/.test(word ?? '')) ?? 100);
  return shape === undefined || percent < 1 || percent > 100
    ? null
    : { shape, share: percent / 100 };
}
