import type { Driver } from './counts.ts';
import type { Step, StepClass } from './schedule.ts';

type Usual = Pick<Step, 'minutes' | 'driver' | 'setupMinutes'> &
  Partial<Pick<Step, 'minutesFor' | 'needs' | 'dusty' | 'cleanAir' | 'fumes' | 'untilRight'>>;

/** Typical minutes, one in ten below, one in ten above; setup and cleanup of a session; what they grow with. */
const work = (
  [typical, low, high]: readonly [typical: number, low: number, high: number],
  setupMinutes: number,
  driver: Driver,
  more: Omit<Usual, 'minutes' | 'driver' | 'setupMinutes'> = {},
): Usual => ({ minutes: { typical, low, high }, driver, setupMinutes, ...more });

/**
 * What work of a class usually takes on a plain hardwood chest of four drawers, about 1.9 m2 of show surface: for steps
 * that no finishing schedule names (common practice, no source).
 */
const usual: Readonly<Record<StepClass, Usual>> = {
  'look over': work([20, 10, 40], 0, 'fixed'),
  'lead test': work([10, 6, 20], 0, 'fixed'),
  'hardware off': work([20, 10, 40], 0, 'fittings'),
  'hardware on': work([25, 12, 50], 0, 'fittings', { needs: ['refit'] }),
  clean: work([30, 20, 60], 10, 'area'),
  strip: work([90, 50, 200], 25, 'area', { fumes: true, untilRight: true }),
  reglue: work([30, 15, 60], 10, 'joints'),
  'patch veneer': work([45, 25, 120], 10, 'fixed'),
  fill: work([10, 5, 20], 10, 'fixed'),
  'sand bare, first grit': work([45, 25, 90], 15, 'area', { needs: ['dry'], dusty: true }),
  'sand bare, next grit': work([28, 18, 50], 15, 'area', { dusty: true }),
  bleach: work([35, 25, 60], 20, 'area', { fumes: true, untilRight: true }),
  'rinse, neutralise': work([20, 15, 35], 20, 'area'),
  'sand after bleach': work([20, 12, 40], 15, 'area', { needs: ['dry'], dusty: true }),
  stain: work([35, 20, 60], 15, 'area', { fumes: true }),
  'pore fill': work([45, 30, 80], 15, 'area'),
  prime: work([30, 20, 50], 15, 'area', { cleanAir: true }),
  'coat, brushed': work([30, 20, 50], 15, 'area', { needs: ['recoat'], cleanAir: true }),
  'coat, wiped': work([20, 12, 30], 8, 'area', { needs: ['recoat'], cleanAir: true }),
  'coat, sprayed': work([12, 8, 20], 30, 'area', {
    needs: ['recoat'],
    cleanAir: true,
    fumes: true,
  }),
  scuff: work([15, 10, 30], 8, 'area', { needs: ['scuff'], dusty: true }),
  'French polish': work([30, 20, 45], 10, 'area', { cleanAir: true, untilRight: true }),
  'rub out': work([95, 60, 160], 10, 'area', { needs: ['rub out'], dusty: true }),
  wax: work([30, 20, 45], 5, 'area'),
  'touch-up': work([15, 5, 45], 10, 'fixed'),
  'fit a drawer': work([8, 4, 25], 0, 'drawers', { minutesFor: 1 }),
  'refit, wrap': work([15, 8, 30], 0, 'fixed', { needs: ['wrap'] }),
  'photograph, list': work([40, 20, 90], 0, 'fixed'),
  deliver: work([60, 30, 150], 0, 'fixed'),
  other: work([30, 10, 60], 0, 'fixed'),
};

const dust = 'Dust mask (P100 on an old finish). No sanding beside a coat that is not dust-free.';

/** A step of a class that is on no schedule. A grit in its name (`sand 150`, `scuff 320`) is its grit. */
export function usualStep(name: string, stepClass: StepClass): Omit<Step, 'id'> {
  const { needs = [], ...rest } = usual[stepClass];
  const grit = rest.dusty === true ? gritIn(name) : null;
  return {
    name,
    stepClass,
    ...rest,
    needs,
    stamps: [],
    windows: [],
    cautions: rest.dusty === true ? [dust] : [],
    ...(grit === null ? {} : { grit }),
  };
}

/** Abrasive papers run from 40 to 3000 (FEPA P series, from memory). */
export function gritIn(name: string): number | null {
  const grit = [...name.matchAll(/\d+/g)]
    .map(Number)
    .find((figure) => figure >= 40 && figure <= 3000);
  return grit ?? null;
}
